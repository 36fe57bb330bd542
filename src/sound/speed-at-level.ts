import type { Decibels, Fraction } from '../quantities/dimensions.ts';
import type { SpeedLevel } from './fan-noise.ts';

/**
 * Speed ratio at which a fan has a level [-], the inverse of `levelAtRatio`; −∞ dB gives 0.
 *
 * Source: inverse of the straight pieces of the speed law, derived.
 *
 * @param model compiled by `speedModel`
 * @param level free-field level at 1 m, without floor, working point or installation [dB]
 */
export function ratioAtLevel(model: SpeedLevel, level: Decibels): Fraction {
  for (const piece of model.pieces) {
    const end = piece.level + piece.slope * (piece.upTo - piece.at);
    if (level <= end) return Math.exp(piece.at + (level - piece.level) / piece.slope);
  }
  const { top } = model;
  return Math.exp(top.at + (level - top.level) / top.slope);
}
