import type { Metres } from '../quantities/dimensions.ts';
import type { Hole } from './hole-shape.ts';

interface Row {
  /** Widest opening of the row [m]. */
  readonly opening: Metres;
  /** Least distance for a slot, a square and a round opening [m]. */
  readonly slot: Metres;
  readonly square: Metres;
  readonly round: Metres;
}

/** ISO 13857, table 4 (fingertip to knuckle, age 14 and over), as published by a maker of safety fences. */
const table: readonly Row[] = [
  { opening: 0.004, slot: 0.002, square: 0.002, round: 0.002 },
  { opening: 0.006, slot: 0.01, square: 0.005, round: 0.005 },
  { opening: 0.008, slot: 0.02, square: 0.015, round: 0.005 },
  { opening: 0.01, slot: 0.08, square: 0.025, round: 0.02 },
  { opening: 0.012, slot: 0.1, square: 0.08, round: 0.08 },
  { opening: 0.02, slot: 0.12, square: 0.12, round: 0.12 },
];

/** Slack for a size that meets a row's limit but for rounding [m]. */
const ROUNDING = 1e-9;

/**
 * Least distance from an opening to moving blades or other hazards behind it, for people of 14 and over [m].
 *
 * A hexagon counts as the round hole about it or the slot of its width, whichever asks less, as the standard says
 * of openings that are neither round, square nor slots.
 *
 * Source: ISO 13857, table 4.
 *
 * @param hole opening [m]
 * @returns undefined above 20 mm, where the table for the hand no longer applies
 */
export function fingerDistance(hole: Hole): Metres | undefined {
  if (hole.shape !== 'hexagon') return rowFor(hole.size)?.[hole.shape];
  const around = rowFor((2 / Math.sqrt(3)) * hole.size)?.round;
  const across = rowFor(hole.size)?.slot;
  if (around === undefined || across === undefined) return across ?? around;
  return Math.min(around, across);
}

function rowFor(opening: Metres): Row | undefined {
  return table.find((row) => opening <= row.opening + ROUNDING);
}
