import type { Fraction } from '../quantities/dimensions.ts';

/** How much of its pressure rise the second of two fans in one stream keeps. */
export interface FanAssumptions {
  /** With fins or a honeycomb between the two, which take the swirl out [-]. */
  readonly deratingAcrossFins: Fraction;
  /** One directly behind the other [-]. */
  readonly deratingDirect: Fraction;
}

/**
 * Default derating of the second fan in series. Model assumption, no source: no published figure was found for
 * two small axial fans with or without fins between them. Plausible range 0.7 … 1.0.
 */
export const FAN_ASSUMPTIONS: FanAssumptions = { deratingAcrossFins: 0.9, deratingDirect: 0.8 };

/** Plausible range of both deratings [-]. Model assumption, no source. */
export const DERATING_RANGE: { readonly low: Fraction; readonly high: Fraction } = { low: 0.7, high: 1 };

/** Share of full speed below which a fan may stand still, if its data do not say [-]. Common practice, no source. */
export const DEFAULT_HOLD_FLOOR: Fraction = 0.2;

/** How far the start floor lies above the hold floor, if the data do not say [-]. Common practice, no source. */
export const START_ABOVE_HOLD: Fraction = 0.1;
