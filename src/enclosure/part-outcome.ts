import { pathSteps } from '../heat/heat-path.ts';
import { partLimits, probeTemperature } from './asked-limits.ts';
import { OUTSIDE, type Part } from './enclosure.ts';
import { finsOutcome } from './fins-outcome.ts';
import { localLoopGain, wholeLoopGain } from './loop-gain.ts';
import type { BudgetLine, PartOutcome } from './outcome.ts';
import { limitOutcome } from './panel-outcome.ts';
import { enteringTemperature, isForward, type SolvedPass } from './solved-pass.ts';

/** What a part's own resistance is called: all of its way, or what is left of it. */
function restLabel(part: Part, seated: boolean): string {
  if (part.pipes || part.base || part.paste) return 'the rest of the way to the part';
  return seated ? 'fin base to part' : 'air to part';
}

/** Kelvins from the fins, or the chamber air, to the part, step by step. */
function pathRise({ state }: SolvedPass, part: Part, index: number, seated: boolean): readonly BudgetLine[] {
  const power = state.partPowers[index] as number;
  const fins = state.finResistances[index] as number;
  const steps = pathSteps(part, fins, restLabel(part, seated));
  return steps.map(({ label, resistance }) => ({ label, amount: power * resistance, eased: 'by contact' }));
}

/** Kelvins above the room, by cause. */
function riseOf(solved: SolvedPass, part: Part, index: number): readonly BudgetLine[] {
  const { machine, state, conditions } = solved;
  const seat = machine.seats[index] ?? null;
  const air = state.partAir[index] as number;
  const path = pathRise(solved, part, index, seat !== null);
  const base = path.reduce(
    (rest, line) => rest - line.amount,
    (state.partTemperatures[index] as number) - air,
  );
  const leg = seat ? machine.plant.enclosure.legs[seat.leg] : undefined;
  const drawnIn = leg && leg.from === OUTSIDE && seat && isForward(solved, seat.leg);
  const again = drawnIn ? enteringTemperature(solved, leg, seat.leg) - conditions.room : 0;
  const lines = [
    { label: 'own exhaust drawn in again', amount: again, eased: 'by keeping exhaust away' as const },
    {
      label: seat ? 'air warmed on its way' : 'air of the chamber',
      amount: air - conditions.room - again,
      eased: 'by flow' as const,
    },
    { label: 'air to fin base', amount: seat ? base : 0, eased: 'by flow' as const },
    ...path.map((line) => (seat ? line : { ...line, amount: line.amount + base / path.length })),
  ];
  return lines.filter((line) => Math.abs(line.amount) > 1e-9);
}

/** Whether a probe in the base is anything else than the part itself. */
function hasProbe({ probe, limits, pipes, base }: Part): boolean {
  return probe !== undefined || limits.some(({ of }) => of === 'probe') || Boolean(pipes ?? base);
}

/** Temperatures of all parts, where they come from and how the limits are met. */
export function partOutcomes(solved: SolvedPass): readonly PartOutcome[] {
  const { machine, duty, state } = solved;
  return machine.plant.enclosure.parts.map((part, index) => {
    const seat = machine.seats[index];
    const whole = state.runaways[index] === 1 ? undefined : wholeLoopGain(solved, part, index);
    return {
      part: part.id,
      power: state.partPowers[index] as number,
      temperature: state.partTemperatures[index] as number,
      rise: riseOf(solved, part, index),
      ...(hasProbe(part) ? { probe: probeTemperature(part, index, state) } : {}),
      ...(seat ? { fins: finsOutcome(solved, seat, state.finResistances[index] as number) } : {}),
      loopGain: localLoopGain(solved, part, index),
      ...(whole === undefined ? {} : { wholeLoopGain: whole }),
      limits: partLimits(part, index, duty).map((limit) => limitOutcome(limit, state)),
    };
  });
}
