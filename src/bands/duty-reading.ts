import { densityAt } from '../air/air.ts';
import { askedLimits, collapses, spoiltParts } from '../enclosure/asked-limits.ts';
import { type Duty, OUTSIDE } from '../enclosure/enclosure.ts';
import type { Machine } from '../enclosure/machine.ts';
import { newNoiseState, soundEnergy } from '../enclosure/noise.ts';
import { createPass } from '../enclosure/pass.ts';
import { conditionsOf, newPassState, type PassState } from '../enclosure/pass-state.ts';
import { enteringTemperature, type SolvedPass } from '../enclosure/solved-pass.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import type { Situation } from './doubt.ts';

/** Accuracy of the temperatures of a reading [K]: differences of some tenths are told from each other. */
const TOLERANCE = 1e-6;

/** From here on a temperature stands for none [K]. */
const NO_TEMPERATURE = HOPELESS / 10;

/** What is read off a build at work in one state of use. */
export interface DutyReading {
  /** What is left to each limit [K]; −∞ if a part has no temperature to settle at. */
  readonly margins: Float64Array;
  /** Of each part [K]; +∞ if it has none. */
  readonly temperatures: Float64Array;
  /** Of each leg, at the state in which the air enters it [m³/s]. */
  readonly flows: Float64Array;
  /** From outside into the box [m³/s]. */
  readonly through: number;
  /** [W] */
  readonly fanPower: number;
  /** Sound energy of each bank, as far off as the box, at the listener [-]. */
  readonly banks: Float64Array;
  /** The same of each opening [-]. */
  readonly vents: Float64Array;
}

/**
 * A build at work in a state of use at given speeds; null if there is no solution.
 *
 * @param machine the build
 * @param duty the state of use
 * @param ratios speed of each bank as a share of full speed [-]
 * @param start a state near by, from which to start; none if absent
 */
export function solvedAt(
  machine: Machine,
  duty: Duty,
  ratios: Float64Array,
  start?: PassState,
): SolvedPass | null {
  const conditions = conditionsOf(machine.plant.enclosure, duty);
  const pass = createPass(machine);
  for (const state of start ? [copied(machine, start), newPassState(machine)] : [newPassState(machine)]) {
    if (pass(conditions, ratios, state, TOLERANCE) === null)
      return { machine, duty, conditions, ratios, state };
  }
  return null;
}

/** A state of its own with the same content. */
function copied(machine: Machine, from: PassState): PassState {
  const to = newPassState(machine);
  to.network.flows.set(from.network.flows);
  to.network.pressures.set(from.network.pressures);
  to.chambers.set(from.chambers);
  to.stages.forEach((stage, leg) => {
    stage.set(from.stages[leg] as Float64Array);
  });
  to.partTemperatures.set(from.partTemperatures);
  to.partPowers.set(from.partPowers);
  to.finResistances.set(from.finResistances);
  to.columns.set(from.columns);
  to.rounds = from.rounds;
  return to;
}

/** Reads off everything that is given a band. */
export function readingOf(solved: SolvedPass): DutyReading {
  const { machine, duty, ratios, state } = solved;
  const { enclosure } = machine.plant;
  const noise = newNoiseState(machine);
  soundEnergy(machine, ratios, state, noise);
  const spread = enclosure.listener.distance ** 2;
  const collapsed = collapses(machine, duty)(state);
  // A part without a limit of its own leaves every limit no more than it has in hand itself.
  const spare = spoiltParts(machine, duty).reduce(
    (least, { excess }) => Math.min(least, -excess(state)),
    Number.POSITIVE_INFINITY,
  );
  const margins = askedLimits(machine, duty).map(({ limit, found }) =>
    collapsed ? Number.NEGATIVE_INFINITY : marginOf(Math.min(spare, limit - found(state))),
  );
  const flows = flowsOf(solved);
  return {
    margins: Float64Array.from(margins),
    temperatures: state.partTemperatures.map((kelvins) =>
      kelvins >= NO_TEMPERATURE ? Number.POSITIVE_INFINITY : kelvins,
    ),
    flows,
    through: throughOf(machine, flows),
    fanPower: state.fanPowers.reduce((sum, watts) => sum + watts, 0),
    banks: noise.banks.map((value) => value / spread),
    vents: noise.vents.map((value) => value / spread),
  };
}

function marginOf(kelvins: number): number {
  return kelvins <= -NO_TEMPERATURE ? Number.NEGATIVE_INFINITY : kelvins;
}

function flowsOf(solved: SolvedPass): Float64Array {
  const { machine, state, conditions } = solved;
  return Float64Array.from(
    machine.plant.enclosure.legs,
    (leg, index) =>
      (state.network.flows[index] as number) /
      densityAt(conditions.site, enteringTemperature(solved, leg, index)),
  );
}

function throughOf(machine: Machine, flows: Float64Array): number {
  return machine.plant.enclosure.legs.reduce((sum, { from, to }, index) => {
    const flow = flows[index] as number;
    if (from === OUTSIDE && flow > 0) return sum + flow;
    return to === OUTSIDE && flow < 0 ? sum - flow : sum;
  }, 0);
}

/** A situation where nothing settles: whatever has a limit breaks it; of the rest nothing is known. */
function unsettled(nominal: DutyReading): DutyReading {
  return {
    ...nominal,
    margins: nominal.margins.map(() => Number.NEGATIVE_INFINITY),
    temperatures: nominal.temperatures.map(() => Number.POSITIVE_INFINITY),
  };
}

/** What is read off a situation, from the nominal one on. */
export function movedReading(
  { machine, duty }: Situation,
  nominal: SolvedPass,
  reading: DutyReading,
): DutyReading {
  const solved = solvedAt(machine, duty, nominal.ratios, nominal.state);
  return solved ? readingOf(solved) : unsettled(reading);
}
