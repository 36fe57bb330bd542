import type {
  CubicMetresPerSecond,
  Decibels,
  Fraction,
  Metres,
  Pascals,
  RevolutionsPerSecond,
  Watts,
} from '../quantities/dimensions.ts';
import type { FanCurve } from './curve.ts';

/** Where the figures of a fan come from. */
export type Provenance = 'measured' | 'datasheet' | 'box' | 'invented';

/** Which way the blades turn, seen from the inlet. */
export const TURNS = ['clockwise', 'anticlockwise'] as const;

export type Turn = (typeof TURNS)[number];

/** One noise rating reduced to free-field sound pressure at 1 m, A-weighted. */
export interface Rating {
  /** Speed at which it holds [1/s]. */
  readonly speed: RevolutionsPerSecond;
  /** A-weighted level at 1 m, free field [dB]. */
  readonly level: Decibels;
  /** False if distance or basis were not stated and the default was assumed. */
  readonly basisStated: boolean;
  /** Unweighted octave levels from 63 Hz to 8 kHz at 1 m, free field [dB]; absent if unknown. */
  readonly octaves?: readonly Decibels[];
  /** What it was before assumptions made it a pressure of a fan hung freely; absent if it took none. */
  readonly basis?: RatingBasis;
}

/** A rating as it was given, where assumptions decide what it comes to. */
export interface RatingBasis {
  /** Sound pressure at 1 m in the free field, or sound power [dB]. */
  readonly level: Decibels;
  /** A declared power is the statistical maximum. */
  readonly of: 'pressure' | 'power' | 'declared-power';
  /** Hung freely, or in a panel such as the wall of a plenum. */
  readonly mounted: Mounting;
}

/** How a fan was mounted when it was rated. */
export const MOUNTINGS = ['free', 'panel'] as const;

export type Mounting = (typeof MOUNTINGS)[number];

/** A fan of the catalog, in SI, ready to compute with. All laws refer to `fullSpeed` and 1.2 kg/m³. */
export interface FanModel {
  readonly id: string;
  /** Side of the square frame [m]. */
  readonly size: Metres;
  /** Depth of the frame along the stream [m]. */
  readonly depth: Metres;
  /** Speed at 100 % [1/s]. */
  readonly fullSpeed: RevolutionsPerSecond;
  /** Least share of full speed at which the fan keeps turning [-], 0 < floor ≤ 1. */
  readonly holdFloor: Fraction;
  /** Least share of full speed at which it starts [-], ≥ holdFloor. */
  readonly startFloor: Fraction;
  /** Pressure curve at full speed. */
  readonly curve: FanCurve;
  /** Ratings, ascending in speed; at least one. */
  readonly ratings: readonly Rating[];
  /** Electrical power at full speed [W]. */
  readonly power: Watts;
  /** Price as a plain number in the user's currency; absent if unknown. */
  readonly price?: number;
  readonly blades?: number;
  /** Struts that carry the motor; absent if unknown. */
  readonly struts?: number;
  /** Absent if unknown. */
  readonly turns?: Turn;
  readonly provenance: Provenance;
}

/** Points of a curve as given, at full speed: ascending in flow. */
export interface CurvePoints {
  readonly flows: readonly CubicMetresPerSecond[];
  readonly pressures: readonly Pascals[];
}
