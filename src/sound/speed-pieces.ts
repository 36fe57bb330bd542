import type { Decibels } from '../quantities/dimensions.ts';
import type { LevelKnot } from './speed-exponent.ts';

/** A straight piece of level over ln of the speed ratio. */
export interface SpeedPiece {
  /** ln of the ratio up to which the piece holds. */
  readonly upTo: number;
  /** A point on it: ln of the ratio, and the level there [dB]. */
  readonly at: number;
  readonly level: Decibels;
  /** Rise [dB] per unit of ln of the ratio, > 0. */
  readonly slope: number;
}

/** Straight pieces that join without a jump: those that end at a knot, ascending, and the one above all. */
export interface SpeedPieces {
  readonly pieces: readonly SpeedPiece[];
  readonly top: SpeedPiece;
}

/**
 * Straight pieces through knots, with one slope below the first and above the last.
 *
 * Source: linear interpolation, derived.
 *
 * @param knots knots ascending in place and in level, at least one
 * @param slope rise outside the knots [dB] per unit of ln of the ratio, > 0
 * @throws RangeError if there is no knot
 */
export function piecesThrough(knots: readonly LevelKnot[], slope: number): SpeedPieces {
  let last = knots[0];
  if (last === undefined) throw new RangeError('a fan needs at least one noise rating');
  const pieces: SpeedPiece[] = [{ upTo: last.at, at: last.at, level: last.level, slope }];
  for (const knot of knots.slice(1)) {
    const rise = (knot.level - last.level) / (knot.at - last.at);
    pieces.push({ upTo: knot.at, at: last.at, level: last.level, slope: rise });
    last = knot;
  }
  return { pieces, top: { upTo: Number.POSITIVE_INFINITY, at: last.at, level: last.level, slope } };
}
