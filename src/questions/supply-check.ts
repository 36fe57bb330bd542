import { type Build, type Enclosure, OUTSIDE } from '../enclosure/enclosure.ts';
import { bankIn } from '../enclosure/stages.ts';
import { heatOfLoads, type SupplyEfficiency, type SupplyState, supplyAt } from '../heat/supply.ts';
import {
  type PeakKind,
  peakAllowance,
  type StartingFans,
  type SupplyHeadroom,
  supplyHeadroom,
} from '../heat/supply-headroom.ts';
import type { Fraction, Watts } from '../quantities/dimensions.ts';

/** Short peaks over what a wall meter shows once a second [-]. Model assumption, no source: 1.1 to 1.3. */
export const USUAL_PEAK: Fraction = 1.2;

/** What is known of a supply and its load. */
export interface SupplyQuestion {
  /** Reading of the wall meter, all at work, fans at full speed [W]. */
  readonly wall: Watts;
  readonly efficiency: SupplyEfficiency;
  /** Of the supply, direct current [W]. */
  readonly rating: Watts;
  readonly inside: boolean;
  /** What leaves the box as electricity, sound or light [W]. */
  readonly useful: Watts;
  readonly fans: readonly StartingFans[];
  /** Short peak over what lasts [-], ≥ 1, and how long it is [s]. */
  readonly peak: { readonly factor: number; readonly duration: number };
  /** Which peaks the supply rides through. */
  readonly kind: PeakKind;
}

/** How a supply stands its load, and what heat it leaves where. */
export interface SupplyAnswer extends SupplyHeadroom {
  readonly state: SupplyState;
  readonly question: SupplyQuestion;
  /** Heat inside the box as the supply stands [W]. */
  readonly heatInside: Watts;
  /** What it would be with the supply on the other side of the wall [W]. */
  readonly heatOtherwise: Watts;
  /** Output over rating that it rides through for the peak [-]. */
  readonly peakShare: Fraction;
}

/**
 * What a supply gives, loses and has left, from a reading at the wall. What is delivered is the reading times the
 * efficiency: the meter stands before the supply.
 *
 * @param question reading, supply, fans and peak
 */
export function supplyCheck(question: SupplyQuestion): SupplyAnswer {
  const { wall, efficiency, rating, inside, useful, fans, peak, kind } = question;
  const state = supplyAt(wall, efficiency);
  const outside = heatOfLoads(state, useful);
  const within = outside + state.loss;
  return {
    ...supplyHeadroom({ sustained: state.output, peaks: [peak], fans }, rating, kind),
    state,
    question,
    heatInside: inside ? within : outside,
    heatOtherwise: inside ? outside : within,
    peakShare: peakAllowance(kind, peak.duration),
  };
}

/** What a scenario knows of its supply. */
export type ScenarioSupply = Pick<SupplyQuestion, 'wall' | 'efficiency' | 'inside' | 'fans'> & {
  /** [W]; absent if nobody said. */
  readonly rating?: Watts;
};

/**
 * The supply of a scenario and the fans of a build that hang on it.
 *
 * @param enclosure the scenario
 * @param build one option index per place; no fans if absent
 * @returns undefined if no part of the scenario is a supply
 */
export function supplyOf(enclosure: Enclosure, build: Build | undefined): ScenarioSupply | undefined {
  const part = enclosure.parts.find(({ supply }) => supply !== undefined);
  if (!part?.supply) return undefined;
  const { output, rating } = part.supply;
  const wall = output + part.power;
  const fans = enclosure.places.flatMap((_, place) => {
    const bank = build && bankIn(enclosure, build, place);
    return bank ? [{ count: bank.count, power: bank.fan.power }] : [];
  });
  return {
    wall,
    efficiency: { kind: 'number', efficiency: output / wall },
    inside: !(part.seat.kind === 'chamber' && part.seat.chamber === OUTSIDE),
    fans,
    ...(rating === undefined ? {} : { rating }),
  };
}
