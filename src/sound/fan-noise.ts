import type { Rating } from '../fan/fan-model.ts';
import type { Decibels, Fraction, Metres, RevolutionsPerSecond } from '../quantities/dimensions.ts';
import { energy, levelOf } from './levels.ts';
import type { Neighbour, NeighbourRises, SoundAssumptions } from './sound-assumptions.ts';
import { fittedExponent, knotsOf, risingKnots } from './speed-exponent.ts';
import { piecesThrough, type SpeedPiece, type SpeedPieces } from './speed-pieces.ts';

/** Level of one fan over its speed, compiled from its ratings once. */
export interface SpeedLevel extends SpeedPieces {
  /** ln of the speed ratios between which ratings carry the level; beyond, the exponent does. */
  readonly rated: { readonly from: number; readonly to: number };
  /** One-sigma uncertainty of the exponent used beyond the ratings [dB per decade]. */
  readonly exponentUncertainty: Decibels;
}

/**
 * Level of a fan over its speed, free field, 1 m, free delivery, without the floor.
 *
 * One rating: the assumed exponent. Two: the exponent weighed from both, through the top rating. Three or more:
 * interpolation of the level against lg N between the ratings, the weighed exponent outside.
 * Source: sound law of fans (AMCA, ASHRAE, from memory); A-weighted exponent from the VDI 2081 axial spectrum.
 *
 * @param ratings at least one rating, speeds [1/s] > 0
 * @param fullSpeed speed at ratio 1 [1/s], > 0
 * @param assumptions exponent and its weighing
 * @throws RangeError if there is no rating
 */
export function speedModel(
  ratings: readonly Rating[],
  fullSpeed: RevolutionsPerSecond,
  assumptions: SoundAssumptions,
): SpeedLevel {
  const knots = knotsOf(ratings, fullSpeed);
  const { exponent, uncertainty } = fittedExponent(knots, assumptions);
  const carried = knots.length > 2 ? risingKnots(knots, assumptions.leastRise) : knots.slice(-1);
  const slope = exponent / Math.LN10;
  const { pieces, top } = piecesThrough(carried, slope);
  const rated = { from: pieces[0]?.upTo ?? top.at, to: top.at };
  return { pieces, top, rated, exponentUncertainty: uncertainty };
}

function pieceAt(model: SpeedLevel, logRatio: number): SpeedPiece {
  for (const piece of model.pieces) {
    if (logRatio <= piece.upTo) return piece;
  }
  return model.top;
}

/**
 * Level at a speed ratio [dB], without floor, working point or installation; strictly rising in the ratio.
 *
 * Source: as `speedModel`.
 *
 * @param model compiled by `speedModel`
 * @param ratio speed over full speed [-]; 0 or less is a fan at rest and gives -Infinity
 */
export function levelAtRatio(model: SpeedLevel, ratio: Fraction): Decibels {
  if (!(ratio > 0)) return Number.NEGATIVE_INFINITY;
  const logRatio = Math.log(ratio);
  const piece = pieceAt(model, logRatio);
  return piece.level + piece.slope * (logRatio - piece.at);
}

/**
 * Slope dL/d ln r of `levelAtRatio` [dB], > 0; at a knot the slope below it.
 *
 * Source: derived.
 *
 * @param model compiled by `speedModel`
 * @param ratio speed over full speed [-]; 0 or less counts as very slow
 */
export function slopeAtRatio(model: SpeedLevel, ratio: Fraction): number {
  return pieceAt(model, ratio > 0 ? Math.log(ratio) : Number.NEGATIVE_INFINITY).slope;
}

/**
 * Rise of a fan's level at its working point over free delivery [dB], continuous and never falling towards shut-off.
 *
 * Source: model assumption, no source for the size; 80 mm computer fans on a plenum grow louder as the flow falls
 * (published: abstract, Applied Acoustics 67 (2006) 849-863).
 *
 * @param flowShare flow over free delivery at the same speed [-]; above 1 counts as 1, reversed flow as shut-off
 * @param assumptions knots in `workingPoint`
 */
export function workingPointTerm(flowShare: Fraction, assumptions: SoundAssumptions): Decibels {
  let before: SoundAssumptions['workingPoint'][number] | undefined;
  for (const knot of assumptions.workingPoint) {
    if (flowShare <= knot.flowShare) {
      if (before === undefined) return knot.rise;
      const part = (knot.flowShare - flowShare) / (knot.flowShare - before.flowShare);
      return knot.rise + part * (before.rise - knot.rise);
    }
    before = knot;
  }
  return before === undefined ? 0 : before.rise;
}

/** Something that stands before or behind a fan. */
export interface Obstacle {
  readonly disturbance: Neighbour;
  /** Clear gap between the fan's frame and it [m]; less than 0 counts as 0. */
  readonly gap: Metres;
}

/** Strongest rise plus the assumed share of the second strongest [dB]. */
function sideRise(
  obstacles: readonly Obstacle[],
  rises: NeighbourRises,
  reach: Metres,
  assumptions: SoundAssumptions,
): Decibels {
  let most = 0;
  let second = 0;
  for (const { disturbance, gap } of obstacles) {
    const rise = rises[disturbance] * Math.exp(-Math.max(0, gap) / reach);
    if (rise > most) {
      second = most;
      most = rise;
    } else if (rise > second) second = rise;
  }
  return most + assumptions.secondNeighbour * second;
}

/**
 * Rise of a fan's level by what stands close to it [dB], ≥ 0: ΔL0 · exp(-g/(0.15 D)) for each neighbour.
 *
 * A second fan in series stands on the downstream fan's inlet as `fan`. The pressure an obstacle costs is not in
 * here. Source: model assumption, no source for the sizes; that inlets matter more than outlets is common practice.
 *
 * @param inlet what stands before the fan
 * @param outlet what it blows at
 * @param size side of the fan's frame [m], > 0
 * @param assumptions `installation`, `gapScale`, `secondNeighbour`, `installationCap`
 */
export function installationTerm(
  inlet: readonly Obstacle[],
  outlet: readonly Obstacle[],
  size: Metres,
  assumptions: SoundAssumptions,
): Decibels {
  const reach = assumptions.gapScale * size;
  const { installation, installationCap } = assumptions;
  const before = sideRise(inlet, installation.inlet, reach, assumptions);
  const behind = sideRise(outlet, installation.outlet, reach, assumptions);
  return Math.min(installationCap, before + behind);
}

/**
 * Level of one running fan with its floor, at 1 m [dB].
 *
 * The floor comes last and at every speed, so the level has no kink. A fan at rest is no source: leave it out.
 * Source: model assumption, no source.
 *
 * @param level speed level plus working point, installation and panel terms [dB]
 * @param floor level the fan never falls below, `fanFloor` [dB]
 */
export function fanLevel(level: Decibels, floor: Decibels): Decibels {
  return levelOf(energy(level) + energy(floor));
}
