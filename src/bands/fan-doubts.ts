import { type SeriesLeg, type Stage, seriesLeg } from '../airway/series.ts';
import type { Machine, MachineBank } from '../enclosure/machine.ts';
import { flowShare } from '../enclosure/noise.ts';
import type { SolvedPass } from '../enclosure/solved-pass.ts';
import type { Uncertainties } from '../enclosure/uncertainties.ts';
import { boxFlowBand } from '../fan/box-figures.ts';
import { stretchedCurve } from '../fan/stretched-curve.ts';
import { commonParts } from './common-parts.ts';
import { type Doubt, factorOf } from './doubt.ts';

/** How far off the flow of a bank's fans may be, below and above [-]. */
interface Reach {
  readonly low: number;
  readonly high: number;
}

/** By how many powers of the reach the flow is off; below the middle the lower one counts. */
function factorWithin({ low, high }: Reach, amount: number): number {
  // A band of −20 % ends at a factor of 0.8.
  return amount < 0 ? (1 - low) ** -amount : factorOf(high, amount);
}

function curveReach(solved: SolvedPass, index: number, { curve }: Uncertainties): Reach {
  const bank = solved.machine.banks[index] as MachineBank;
  const { id, provenance } = bank.bank.fan;
  const even = (share: number): Reach => ({ low: 1 - 1 / (1 + share), high: share });
  if (Object.hasOwn(curve.of, id)) return even(curve.of[id] as number);
  if (!bank.bank.fan.curve.synthesised) {
    return even(provenance === 'measured' ? curve.measured : curve.datasheet);
  }
  if (curve.box !== undefined) return even(curve.box);
  const { low, high } = boxFlowBand(
    flowShare(solved.machine, bank, solved.ratios[index] as number, solved.state),
  );
  return { low: -low, high };
}

/** The machine with the fans of each bank giving another flow. */
function restretched(machine: Machine, factors: readonly number[]): Machine {
  const legs = machine.legs.map((leg, at) => {
    const stages = machine.banks.flatMap((bank, index) =>
      bank.leg === at && factors[index] !== 1
        ? [{ stage: bank.stage, factor: factors[index] as number }]
        : [],
    );
    return stages.length === 0 ? leg : stretchedLeg(leg, stages);
  });
  const banks = machine.banks.map((bank, index) => {
    if (factors[index] === 1) return bank;
    const curve = stretchedCurve(bank.bank.fan.curve, factors[index] as number);
    return { ...bank, bank: { ...bank.bank, fan: { ...bank.bank.fan, curve } } };
  });
  return { ...machine, legs, banks };
}

function stretchedLeg(leg: SeriesLeg, moved: readonly { stage: number; factor: number }[]): SeriesLeg {
  return seriesLeg(
    leg.stages.map((stage, at): Stage => {
      const factor = moved.find((entry) => entry.stage === at)?.factor;
      return stage.kind === 'bank' && factor !== undefined
        ? { ...stage, curve: stretchedCurve(stage.curve, factor) }
        : stage;
    }),
  );
}

function curveDoubts(solved: SolvedPass, sizes: Uncertainties): readonly Doubt[] {
  const { banks } = solved.machine;
  const reaches = banks.map((_, index) => curveReach(solved, index, sizes));
  return commonParts(solved.machine, 'curve').map(({ key, weights }) => ({
    key,
    moved: ({ machine, duty }, amount) => ({
      machine: restretched(
        machine,
        reaches.map((reach, index) => factorWithin(reach, amount * (weights[index] as number))),
      ),
      duty,
    }),
  }));
}

/** Half speed, at which the loss of slow fans is stated [-]. */
const HALF_SPEED = 0.5;

function slowDoubt({ machine, ratios }: SolvedPass, sizes: Uncertainties): readonly Doubt[] {
  if (machine.banks.length === 0) return [];
  const shares = machine.banks.map(
    (_, index) => (sizes.slowFan * (1 - (ratios[index] as number))) / HALF_SPEED,
  );
  return [
    {
      key: 'slow fans',
      moved: ({ machine: moving, duty }, amount) => ({
        // Slow fans give less than the fan laws say, never more.
        machine:
          amount >= 0
            ? moving
            : restretched(
                moving,
                shares.map((share) => (1 - share) ** -amount),
              ),
        duty,
      }),
    },
  ];
}

function powerDoubts({ machine }: SolvedPass, sizes: Uncertainties): readonly Doubt[] {
  const models = [...new Set(machine.banks.map(({ bank }) => bank.fan.id))];
  return models.map((id) => ({
    key: `power of ${id}`,
    moved: ({ machine: moving, duty }, amount) => {
      const factor = factorOf(sizes.fanPower, amount);
      const banks = moving.banks.map((entry) => {
        const { bank } = entry;
        return bank.fan.id === id
          ? { ...entry, bank: { ...bank, fan: { ...bank.fan, power: bank.fan.power * factor } } }
          : entry;
      });
      return { machine: { ...moving, banks }, duty };
    },
  }));
}

/**
 * What may be off about fans, but for their noise: the flow they give, all of them and when slow, and their power.
 *
 * @param solved the build at work
 * @param sizes how far off each may be
 */
export function fanDoubts(solved: SolvedPass, sizes: Uncertainties): readonly Doubt[] {
  return [...curveDoubts(solved, sizes), ...slowDoubt(solved, sizes), ...powerDoubts(solved, sizes)];
}
