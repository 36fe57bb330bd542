import { densityAt } from '../air/air.ts';
import type { SeriesLeg } from '../airway/series.ts';
import { runsAlong, shareFromFirst, streamAlong } from '../heat/stagnant-air.ts';
import type { KelvinDifference, Kelvins, KilogramsPerCubicMetre, Metres } from '../quantities/dimensions.ts';
import type { Leg } from './enclosure.ts';
import { enteringAir } from './entering-air.ts';
import type { Machine } from './machine.ts';
import { type Conditions, HOTTEST_AIR, type PassState } from './pass-state.ts';

/** Standard acceleration of gravity [m/s²]. Source: definition, CGPM 1901. */
const GRAVITY = 9.80665;
/** Air in rising legs before anything is known, above the room [K]: gives a first direction. */
const FIRST_RISE: KelvinDifference = 10;
/** First share of a correction that is taken, and the bounds of those that follow [-]. */
const FIRST_SHARE = 0.5;
const SHARES = { least: 0.01, most: 1 };

/** Weight of the air in legs that rise or fall, worked out along with air and heat. */
export interface Chimney {
  /** Starts a pass; if nothing is known yet the air of the legs is taken a little warmer than the room. */
  readonly begin: (conditions: Conditions, state: PassState) => void;
  /** Sets what the weight gives along each leg. */
  readonly lift: (conditions: Conditions, state: PassState) => void;
  /** Takes over the air found; returns by how much it missed the one assumed [K]. */
  readonly settle: (conditions: Conditions, state: PassState) => KelvinDifference;
}

function densityIn(conditions: Conditions, temperature: Kelvins): KilogramsPerCubicMetre {
  return densityAt(conditions.site, Math.min(temperature, HOTTEST_AIR));
}

/** Mean density of the air of a leg [kg/m³]. Where it hardly moves, air of both ends meets in it. */
function meanDensity(leg: Leg, index: number, conditions: Conditions, state: PassState): number {
  const flow = state.network.flows[index] as number;
  const own = streamDensity(leg, index, conditions, state);
  const share = runsAlong(flow) ? 1 - shareFromFirst(flow) : shareFromFirst(flow);
  if (share === 0) return own;
  const other = densityIn(conditions, enteringAir(leg, !runsAlong(flow), state));
  return own + share * (other - own);
}

/** Mean density of the air that streams through a leg [kg/m³]; its places share the height evenly. */
function streamDensity(leg: Leg, index: number, conditions: Conditions, state: PassState): number {
  const flow = state.network.flows[index] as number;
  const temperatures = state.stages[index] as Float64Array;
  if (temperatures.length === 0) return densityIn(conditions, enteringAir(leg, runsAlong(flow), state));
  const capacity = streamAlong(flow) * conditions.specificHeat;
  let sum = 0;
  for (let stage = 0; stage < temperatures.length; stage++) {
    const before = temperatures[stage] as number;
    const behind = before + ((state.stageHeat[index] as Float64Array)[stage] as number) / capacity;
    sum += 0.5 * (densityIn(conditions, before) + densityIn(conditions, behind));
  }
  return sum / temperatures.length;
}

interface RisingLeg {
  readonly index: number;
  readonly leg: Leg;
  readonly rise: Metres;
}

/** Whether any leg of an enclosure leads up or down. */
export function isChimney(legs: readonly Leg[]): boolean {
  return legs.some(({ rise = 0 }) => rise !== 0);
}

/** Nothing rises. */
const LEVEL: Chimney = { begin: () => {}, lift: () => {}, settle: () => 0 };

/**
 * Prepares the weight of the air in the legs of a build: g·h·(ρ of the room − mean ρ of the leg) along each leg that
 * rises by h.
 *
 * Warm air drives a flow that cools it, so that corrections taken whole may swing for ever: each round takes the
 * share of them that the last two rounds say is right.
 * Source: hydrostatics (derived); Irons & Tuck, Int. J. Numer. Meth. Eng. 1 (1969) 275 (from memory).
 *
 * @param machine the build
 */
export function createChimney(machine: Machine): Chimney {
  const rising: RisingLeg[] = machine.plant.enclosure.legs.flatMap((leg, index) =>
    leg.rise ? [{ index, leg, rise: leg.rise }] : [],
  );
  if (rising.length === 0) return LEVEL;
  const missed = new Float64Array(rising.length);
  const before = new Float64Array(rising.length);
  let share = 0;

  /** Share of the corrections to take, from how the last share changed them. */
  const nextShare = (): number => {
    if (share === 0) return FIRST_SHARE;
    let along = 0;
    let size = 0;
    for (let entry = 0; entry < missed.length; entry++) {
      const change = (missed[entry] as number) - (before[entry] as number);
      along += (before[entry] as number) * change;
      size += change * change;
    }
    const found = size > 0 ? (-share * along) / size : SHARES.most;
    return Math.min(SHARES.most, Math.max(SHARES.least, found));
  };

  return {
    begin: (conditions, state) => {
      share = 0;
      if (state.rounds > 0) return;
      for (const { index } of rising) {
        state.columns[index] = densityIn(conditions, conditions.room + FIRST_RISE);
      }
    },
    lift: (conditions, state) => {
      const room = densityIn(conditions, conditions.room);
      for (const { index, rise } of rising) {
        (machine.legs[index] as SeriesLeg).lift = GRAVITY * rise * (room - (state.columns[index] as number));
      }
    },
    settle: (conditions, state) => {
      let most = 0;
      rising.forEach(({ index, leg }, entry) => {
        const assumed = state.columns[index] as number;
        missed[entry] = meanDensity(leg, index, conditions, state) - assumed;
        // A perfect gas: the relative miss of the density is that of the temperature.
        most = Math.max(most, (Math.abs(missed[entry] as number) / assumed) * conditions.room);
      });
      share = nextShare();
      rising.forEach(({ index }, entry) => {
        state.columns[index] = (state.columns[index] as number) + share * (missed[entry] as number);
      });
      before.set(missed);
      return most;
    },
  };
}
