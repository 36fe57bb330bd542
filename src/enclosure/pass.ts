import { densityAt, type Site, viscosityAt } from '../air/air.ts';
import type { SeriesLeg } from '../airway/series.ts';
import { createRelaxedIteration } from '../numerics/relaxed-iteration.ts';
import type { KelvinDifference } from '../quantities/dimensions.ts';
import { createChimney } from './chimney.ts';
import type { Machine } from './machine.ts';
import { collectHeat, march, settleParts } from './pass-heat.ts';
import { type Conditions, HOTTEST_AIR, type PassState } from './pass-state.ts';

const MAX_ROUNDS = 200;
/** Rounds after which a coarser accuracy will do: flows near nothing may creep along for ever. */
const PATIENCE = 50;
/** That accuracy [K]. */
const COARSE: KelvinDifference = 1e-5;

/**
 * Relative change of the last step at which flows count as balanced [-], in the first round and later. Steps by tangents
 * square it, so that what it leaves is far below what temperatures still change by.
 */
const FIRST_ACCURACY = 1e-4;
const ACCURACY = 1e-6;

/** Rounds in which corrections are taken whole; more where legs rise, whose weight is relaxed by itself. */
const FREE_ROUNDS = { level: 6, rising: 16 } as const;
/** Rounds after which a part that runs away is given up: nothing about it is going to settle. */
const RUNAWAY_ROUNDS = 60;

/** Why a pass gave no answer. */
export type PassFailure =
  | 'the flows do not balance'
  | 'air and heat do not settle'
  /** Told apart from the one before only where outcomes are shown. */
  | 'the parts run away: their power rises with temperature about as fast as the air cools them, or faster';

function start(machine: Machine, conditions: Conditions, state: PassState): void {
  if (state.rounds > 0) return;
  state.chambers.fill(conditions.room);
  for (const temperatures of state.stages) temperatures.fill(conditions.room);
  state.partTemperatures.fill(conditions.room);
  machine.plant.enclosure.parts.forEach((part, index) => {
    state.partPowers[index] = part.power * (conditions.heat[index] as number);
  });
}

function setAir(machine: Machine, site: Site, ratios: Float64Array, state: PassState): void {
  machine.banks.forEach((bank, index) => {
    (machine.legs[bank.leg] as SeriesLeg).ratios[bank.stage] = ratios[index] as number;
  });
  machine.legs.forEach((leg, index) => {
    const temperatures = state.stages[index] as Float64Array;
    for (let stage = 0; stage < temperatures.length; stage++) {
      const temperature = Math.min(temperatures[stage] as number, HOTTEST_AIR);
      leg.densities[stage] = densityAt(site, temperature);
      leg.viscosities[stage] = viscosityAt(temperature);
    }
    leg.refresh();
  });
}

/** Whether a round has changed next to nothing. */
function isSettled(change: KelvinDifference, tolerance: KelvinDifference, round: number): boolean {
  const enough = round < PATIENCE ? tolerance : Math.max(tolerance, COARSE);
  return round > 1 && change <= enough;
}

function lastRound({ runaways }: PassState): number {
  return runaways.includes(1) ? RUNAWAY_ROUNDS : MAX_ROUNDS;
}

/** Solves one build in one state of use at given speeds: air and heat to a fixed point. */
export type Pass = (
  conditions: Conditions,
  ratios: Float64Array,
  state: PassState,
  tolerance: number,
) => PassFailure | null;

/**
 * Prepares passes of a build: flows and pressures by the network balance, temperatures by mixing, until the
 * largest change of any temperature is below the tolerance. Densities follow the temperatures.
 *
 * @param machine the build
 * @returns a function of conditions, speed of each bank as a share of full speed [-], state and tolerance [K]
 *   that overwrites the state and returns null, or the reason why there is no answer
 */
export function createPass(machine: Machine): Pass {
  const { balance, mix, topology } = machine.plant;
  const legHeat = new Float64Array(machine.legs.length);
  const chamberHeat = new Float64Array(topology.chambers);
  const chimney = createChimney(machine);
  const stages = machine.legs.reduce((sum, leg) => sum + leg.stages.length, 0);
  const freeRounds = machine.plant.enclosure.legs.some(({ rise }) => rise)
    ? FREE_ROUNDS.rising
    : FREE_ROUNDS.level;
  const relaxed = createRelaxedIteration(stages + machine.seats.length);
  /** Flows, then the heat they carry; the reason if there is no answer. */
  const solveAir = (conditions: Conditions, ratios: Float64Array, state: PassState, round: number) => {
    setAir(machine, conditions.site, ratios, state);
    chimney.lift(conditions, state);
    const report = balance(machine.legs, state.network, round === 1 ? FIRST_ACCURACY : ACCURACY);
    state.steps += report.steps;
    if (report.status !== 'balanced') return 'the flows do not balance';
    collectHeat(machine, conditions, ratios, state, legHeat, chamberHeat);
    const { room, specificHeat } = conditions;
    const mixed = mix(state.network.flows, legHeat, chamberHeat, room, specificHeat, state.chambers);
    return mixed ? null : 'air and heat do not settle';
  };
  return (conditions, ratios, state, tolerance) => {
    start(machine, conditions, state);
    chimney.begin(conditions, state);
    relaxed.begin();
    const unknowns = [...state.stages, state.partPowers];
    state.steps = 0;
    for (let round = 1; round <= lastRound(state); round++) {
      const failure = solveAir(conditions, ratios, state, round);
      if (failure) return fail(state, failure);
      relaxed.assume(unknowns);
      const change = Math.max(
        march(machine, conditions, state),
        settleParts(machine, conditions, state),
        chimney.settle(conditions, state),
      );
      state.rounds = round;
      if (isSettled(change, tolerance, round)) return null;
      if (round >= freeRounds) relaxed.correct(unknowns);
    }
    return fail(state, 'air and heat do not settle');
  };
}

/** Leaves a state from which the next pass starts afresh. */
function fail(state: PassState, reason: PassFailure): PassFailure {
  state.rounds = 0;
  state.network.flows.fill(0.005);
  return reason;
}
