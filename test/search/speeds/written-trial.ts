import type { Point, Trial } from '../../../src/search/trial.ts';

/** What a trial of written-out functions knows, of speeds between a floor and 1. */
export interface Written {
  readonly floors: readonly number[];
  /** Sound energy [-]. */
  readonly energy: (ratios: Float64Array) => number;
  /** Excess of each limit [K]. */
  readonly excess: (ratios: Float64Array) => readonly number[];
}

/** A trial of functions that are written out, with no build behind it. */
export function writtenTrial({ floors, energy, excess }: Written): Trial {
  let passes = 0;
  const evaluate = (ratios: Float64Array): Point => {
    passes += 1;
    const over = Float64Array.from(excess(ratios));
    const worst = Math.max(Number.NEGATIVE_INFINITY, ...over);
    return {
      ratios: Float64Array.from(ratios),
      energy: energy(ratios),
      excess: over,
      worst,
      warmest: worst,
      fanPower: 1,
      flows: new Float64Array(0),
      failure: null,
    };
  };
  const trial = {
    machine: { seats: [], banks: [] },
    limits: [],
    floors: Float64Array.from(floors),
    ceilings: new Float64Array(floors.length).fill(1),
    evaluate,
    leastEnergy: () => 1e-9,
    allSpeeds: (ratios: Float64Array) => ratios,
    passes: () => passes,
  };
  // The search of speeds asks for nothing else of the machine, and not for the duty.
  return trial as unknown as Trial;
}
