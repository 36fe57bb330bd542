import { loopGain } from '../heat/part-temperature.ts';
import { OUTSIDE, type Part } from './enclosure.ts';
import type { BudgetLine, LimitOutcome, PartOutcome } from './outcome.ts';
import { enteringTemperature, type SolvedPass } from './solved-pass.ts';

function limitOutcomes(solved: SolvedPass, part: Part, index: number): readonly LimitOutcome[] {
  const { state } = solved;
  return part.limits.map((limit) => {
    const found = (limit.of === 'part' ? state.partTemperatures[index] : state.partAir[index]) as number;
    return { of: limit.of, limit: limit.temperature, found, margin: limit.temperature - found };
  });
}

/** Kelvins above the room, by cause. */
function riseOf(solved: SolvedPass, part: Part, index: number): readonly BudgetLine[] {
  const { machine, state, conditions } = solved;
  const seat = machine.seats[index] ?? null;
  const air = state.partAir[index] as number;
  const own = state.partPowers[index] as number;
  const toPart = own * part.resistance;
  const base = (state.partTemperatures[index] as number) - air - toPart;
  const leg = seat ? machine.plant.enclosure.legs[seat.leg] : undefined;
  const drawnIn = leg && leg.from === OUTSIDE && seat && (state.network.flows[seat.leg] as number) >= 0;
  const again = drawnIn ? enteringTemperature(solved, leg, seat.leg) - conditions.room : 0;
  const lines = [
    { label: 'own exhaust drawn in again', amount: again },
    { label: seat ? 'air warmed on its way' : 'air of the chamber', amount: air - conditions.room - again },
    { label: 'air to fin base', amount: seat ? base : 0 },
    { label: seat ? 'fin base to part' : 'air to part', amount: seat ? toPart : toPart + base },
  ];
  return lines.filter((line) => Math.abs(line.amount) > 1e-9);
}

/** Temperatures of all parts, where they come from and how the limits are met. */
export function partOutcomes(solved: SolvedPass): readonly PartOutcome[] {
  const { machine, duty, state } = solved;
  return machine.plant.enclosure.parts.map((part, index) => {
    const nominal = part.power * (duty.heat[index] as number);
    const resistance = (state.finResistances[index] as number) + part.resistance;
    return {
      part: part.id,
      power: state.partPowers[index] as number,
      temperature: state.partTemperatures[index] as number,
      rise: riseOf(solved, part, index),
      loopGain: loopGain(resistance, nominal, part.slope),
      limits: limitOutcomes(solved, part, index),
    };
  });
}
