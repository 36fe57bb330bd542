import type { SeriesLeg } from '../../airway/series.ts';
import { spoiltParts } from '../../enclosure/asked-limits.ts';
import type { Duty } from '../../enclosure/enclosure.ts';
import type { Machine, MachineBank } from '../../enclosure/machine.ts';
import { flowShare } from '../../enclosure/noise.ts';
import type { PassState } from '../../enclosure/pass-state.ts';
import type { Fraction, KelvinDifference } from '../../quantities/dimensions.ts';

/**
 * What is asked beside the limits, as if it were one: how far it is broken at given speeds, in a measure that
 * the search for speeds knows how to deal with; ≤ 0 if it holds.
 */
export type PointAsk = (ratios: Float64Array, state: PassState) => KelvinDifference;

/**
 * What counts as much as a kelvin above a limit: a flow share of 0.01. Over the range of speeds flow shares move by
 * some tenths where temperatures move by some tens of kelvins. Sets the stride of the search only.
 */
const KELVINS_PER_SHARE = 100;
/** Share of the flow at the peak that is kept clear of it [-]: rounding shall not make a fan stall. */
const CLEAR: Fraction = 1e-5;

/**
 * Least flow through a bank through which no air may run backwards, as a share of its free delivery [-]. Nearer to
 * nothing the air that hardly moves gets so hot that there may be two solutions, one of them backwards. Assumption.
 */
const LEAST_FORWARD: Fraction = 0.01;

/** Flow at the peak of the curve less the flow, as a share of free delivery [-]; of a curve that only falls, no peak. */
function stallAsk(machine: Machine, entry: MachineBank, index: number): PointAsk {
  const { curve } = entry.bank.fan;
  const least = Math.max(LEAST_FORWARD, (curve.peakFlow / curve.freeDelivery) * (1 + CLEAR));
  return (ratios, state) => {
    const share = flowShare(machine, entry, ratios[index] as number, state);
    return KELVINS_PER_SHARE * (least - share);
  };
}

/** What the flow through a bank lacks, as a share of its free delivery at full speed [-]. */
function backFlowAsk(machine: Machine, { leg, stage, bank }: MachineBank): PointAsk {
  const law = machine.legs[leg] as SeriesLeg;
  const whole = Math.max(1, bank.count) * bank.fan.curve.freeDelivery;
  return (_, state) => {
    const flow = (state.network.flows[leg] as number) / (law.densities[stage] as number);
    return KELVINS_PER_SHARE * (LEAST_FORWARD - flow / whole);
  };
}

/**
 * What is asked of a build in a duty beside its limits: that no fan stalls, that air runs backwards through none, that no
 * part without a limit of its own spoils. A faster fan may break each of them though every limited part gets cooler.
 *
 * @param machine the build
 * @param duty the state of use
 */
export function pointAsks(machine: Machine, duty: Duty): readonly PointAsk[] {
  const { noStall = false, noBackFlow = false } = machine.plant.enclosure.asks ?? {};
  const ofBanks = machine.banks.flatMap((entry, index) => [
    ...(noStall && entry.bank.count > 0 ? [stallAsk(machine, entry, index)] : []),
    ...(noBackFlow ? [backFlowAsk(machine, entry)] : []),
  ]);
  const ofParts = spoiltParts(machine, duty).map(
    ({ excess }): PointAsk =>
      (_, state) =>
        excess(state),
  );
  return [...ofBanks, ...ofParts];
}
