import type { Fraction } from '../quantities/dimensions.ts';

/** How far a fan's disc makes itself felt in what stands close to it, in diameters of the blade circle [-]. */
export interface PlenumReach {
  /** Up to this distance only the ring that the blades sweep is used. */
  readonly ringUpTo: Fraction;
  /** From this distance on the whole face is used; 0 switches the effect off. */
  readonly fullFrom: Fraction;
}

/** Every number of the fan model that comes from judgement, to be set by who has measured better. */
export interface FanAssumptions {
  /** Share of its pressure rise the second of two fans keeps with fins or a honeycomb between, which end the swirl [-]. */
  readonly deratingAcrossFins: Fraction;
  /** The same, one directly behind the other [-]. */
  readonly deratingDirect: Fraction;
  /** Circle that the blades pass over the side of the frame [-]. */
  readonly bladeCircle: Fraction;
  /** Hub over that circle [-]. */
  readonly hub: Fraction;
  /** A flat wall parallel to the fan. */
  readonly wall: {
    /** Distance within which it counts, in diameters of the blade circle [-]. */
    readonly reach: Fraction;
    /** Share of its loss that counts before the inlet and behind the outlet [-]; 0 switches it off. */
    readonly inlet: Fraction;
    readonly outlet: Fraction;
  };
  /** What stands across the stream close to the fan: fins and filters, and thin sheets such as grilles and guards. */
  readonly plenum: { readonly deep: PlenumReach; readonly sheet: PlenumReach };
  /** Fans of a bank that do not turn. */
  readonly lost: {
    /** Factor on the resistance of a stopped fan for a dead one [-]; {@link STOPPED_RANGE}. */
    readonly stopped: Fraction;
    /** Loss of the hole that a missing fan leaves, in heads of the velocity through the blade circle [-]. */
    readonly hole: number;
  };
}

/**
 * The assumptions unless a user sets others. Model assumptions, no source, but for these: no loss from a wall half a
 * diameter or more before the inlet (abstract of an ASHRAE study of 2005 on axial fans near plenum walls); a thin
 * sharp hole loses 2.85 heads (Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 4-17, from memory). No
 * published figure was found for the derating of two small axial fans with or without fins between them.
 */
export const FAN_ASSUMPTIONS: FanAssumptions = {
  deratingAcrossFins: 0.9,
  deratingDirect: 0.8,
  bladeCircle: 0.96,
  hub: 0.35,
  wall: { reach: 0.5, inlet: 1, outlet: 0.5 },
  plenum: { deep: { ringUpTo: 0.25, fullFrom: 0.5 }, sheet: { ringUpTo: 0.1, fullFrom: 0.25 } },
  lost: { stopped: 1, hole: 2.85 },
};

/** Plausible range of both deratings [-]. Model assumption, no source. */
export const DERATING_RANGE: { readonly low: Fraction; readonly high: Fraction } = { low: 0.7, high: 1 };

/**
 * Plausible range of the resistance of a fan that does not turn, as a factor on that of its extended curve [-]: from
 * a rotor that the stream turns to a locked one with closed blades. Model assumption, no source.
 */
export const STOPPED_RANGE: { readonly low: Fraction; readonly high: Fraction } = { low: 0.3, high: 3 };

/** Share of full speed below which a fan may stand still, if its data do not say [-]. Common practice, no source. */
export const DEFAULT_HOLD_FLOOR: Fraction = 0.2;

/** How far the start floor lies above the hold floor, if the data do not say [-]. Common practice, no source. */
export const START_ABOVE_HOLD: Fraction = 0.1;

/** Share of full speed below which the fan laws are uncertain [-]. Model assumption, no source. */
export const UNCERTAIN_SPEED: Fraction = 0.3;

/**
 * Frames smaller than this work at so low a Reynolds number that the fan laws are uncertain [m]. Model assumption;
 * of rotors from 80 to 10 mm only the smallest clearly left the fan laws (abstract, ASME summer heat transfer 2005).
 */
export const UNCERTAIN_SIZE = 0.04;
