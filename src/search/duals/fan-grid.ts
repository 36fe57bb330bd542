import type { Bank } from '../../enclosure/enclosure.ts';
import { evaluateRise, type Rise } from '../../fan/curve.ts';
import { workingPointTerm } from '../../sound/fan-noise.ts';
import { energy } from '../../sound/levels.ts';
import type { SoundAssumptions } from '../../sound/sound-assumptions.ts';
import { stallTerm } from '../../sound/stall.ts';
import { FLOW_STEP, flowAt } from './flow-grid.ts';

/** Steps of the grid of flows between two speeds looked at: what lies between them is worth 0.01 dB. */
export const SPEED_STEPS = 3;

/** What a bank does over the flow, worked out as far as it is read. */
export interface FlowTable {
  /**
   * Reads values at a step and at the next ones a speed apart, the last first.
   *
   * @param step of the last; may be infinite to either side
   * @param count of values
   * @param out receives them from the given place on
   * @param at place of the first of them
   */
  readonly read: (step: number, count: number, out: Float64Array, at: number) => void;
}

/**
 * A bank at full speed on the grid of volume flows. By the fan laws a slower one is the same bank at a greater flow, so
 * where speeds are whole steps apart one table serves all of them.
 */
export interface FanGrid {
  /** Pressure rise in air of the density of reference [Pa]. */
  readonly rises: FlowTable;
  /** Factor of the working point on the sound energy [-]. */
  readonly factors: FlowTable;
}

/** Flows a table reaches from, as a share of free delivery, and how far: up to six times free delivery. */
const LEAST_SHARE = 0.04;
const MOST_SHARE = 6;
/** Speeds its values are apart from the first to the last. */
const LENGTH = Math.ceil(Math.log(MOST_SHARE / LEAST_SHARE) / (SPEED_STEPS * FLOW_STEP));

/** A stretch of one row of a table that has been worked out. */
interface Stretch {
  from: number;
  to: number;
}

/**
 * A table from a first step on. Values a speed apart stand side by side: they are read together, and by the million.
 *
 * @param first step of the first value
 * @param make works out a value
 */
function flowTable(first: number, make: (step: number) => number): FlowTable {
  const known = new Float64Array(SPEED_STEPS * LENGTH);
  const done = Array.from({ length: SPEED_STEPS }, (): Stretch => ({ from: 0, to: 0 }));

  const work = (row: number, from: number, to: number): void => {
    for (let column = from; column < to; column++) {
      known[row * LENGTH + column] = make(first + SPEED_STEPS * column + row);
    }
  };

  /** Works out what is missing of a stretch, and of the gap to what is known. */
  const fill = (row: number, from: number, to: number): void => {
    const stretch = done[row] as Stretch;
    if (stretch.from === stretch.to) {
      work(row, from, to);
      stretch.from = from;
      stretch.to = to;
      return;
    }
    if (from < stretch.from) {
      work(row, from, stretch.from);
      stretch.from = from;
    }
    if (to > stretch.to) {
      work(row, stretch.to, to);
      stretch.to = to;
    }
  };

  return {
    read: (step, count, out, at) => {
      const past = step - first;
      const column = Math.floor(past / SPEED_STEPS);
      if (column >= 0 && column + count <= LENGTH) {
        const row = past - SPEED_STEPS * column;
        fill(row, column, column + count);
        let from = row * LENGTH + column;
        for (let index = at + count - 1; index >= at; index--) {
          out[index] = known[from] as number;
          from += 1;
        }
      } else if (Number.isFinite(step)) {
        for (let index = 0; index < count; index++) {
          out[at + count - 1 - index] = make(step + SPEED_STEPS * index);
        }
      } else out.fill(make(step), at, at + count);
    },
  };
}

/**
 * Rise of a fan's level by its working point, as a factor on its energy [-].
 *
 * @param bank the fans
 * @param share flow over free delivery at the same speed [-]
 * @param sound assumptions
 */
export function workingFactor({ fan }: Bank, share: number, sound: SoundAssumptions): number {
  const { curve } = fan;
  const term = Math.max(
    workingPointTerm(share, sound),
    stallTerm(share, curve.peakFlow / curve.freeDelivery, sound),
  );
  return term > 0 ? energy(term) : 1;
}

/**
 * Prepares the tables of a bank; they are filled as they are read.
 *
 * @param bank the fans
 * @param sound assumptions
 */
export function fanGrid(bank: Bank, sound: SoundAssumptions): FanGrid {
  const { curve } = bank.fan;
  const found: Rise = { rise: 0, slope: 0 };
  const least = (LEAST_SHARE * curve.freeDelivery * bank.count) / flowAt(0);
  const first = Math.floor(Math.log(least) / FLOW_STEP);
  const rises = flowTable(first, (step) => {
    evaluateRise(curve, flowAt(step) / bank.count, 1, 1, found);
    return found.rise;
  });
  const factors = flowTable(first, (step) =>
    workingFactor(bank, flowAt(step) / (bank.count * curve.freeDelivery), sound),
  );
  return { rises, factors };
}
