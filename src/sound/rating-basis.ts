import type { FanModel, Rating, RatingBasis } from '../fan/fan-model.ts';
import type { Decibels } from '../quantities/dimensions.ts';
import { FIELD_DIRECTIVITY, pressureOverPower, RATING_DISTANCE } from './rating.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';

/**
 * What a rating comes to as pressure at 1 m of a fan hung freely [dB].
 *
 * A fan rated in a panel, as in ISO 10302, has the panel in its figure; it is taken off, because it is added to every
 * fan in its place. Source: definition of sound power, and that ISO 9296 declares a maximum; sizes: `powerField`,
 * `declaredAllowance` and `panelMounting` of the assumptions.
 *
 * @param basis as given
 * @param assumptions `powerField`, `declaredAllowance` and `panelMounting`
 */
export function levelOnBasis(basis: RatingBasis, assumptions: SoundAssumptions): Decibels {
  const { level, of, mounted } = basis;
  const drop = pressureOverPower(RATING_DISTANCE, FIELD_DIRECTIVITY[assumptions.powerField]);
  const pressure = of === 'pressure' ? level : level + drop;
  const mean = of === 'declared-power' ? pressure - assumptions.declaredAllowance : pressure;
  return mounted === 'panel' ? mean - assumptions.panelMounting : mean;
}

function rebasedRating(rating: Rating, assumptions: SoundAssumptions): Rating {
  const { basis, level: before, octaves } = rating;
  if (!basis) return rating;
  const level = levelOnBasis(basis, assumptions);
  if (level === before) return rating;
  return { ...rating, level, ...(octaves ? { octaves: octaves.map((each) => each + level - before) } : {}) };
}

/**
 * A fan with its ratings as the assumptions have them; the fan itself if they change nothing.
 *
 * Source: `levelOnBasis`.
 *
 * @param fan read with any assumptions
 * @param assumptions those that count
 */
export function rebasedFan(fan: FanModel, assumptions: SoundAssumptions): FanModel {
  const ratings = fan.ratings.map((rating) => rebasedRating(rating, assumptions));
  return ratings.every((rating, index) => rating === fan.ratings[index]) ? fan : { ...fan, ratings };
}
