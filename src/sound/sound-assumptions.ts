import type { Disturbance } from '../elements/element.ts';
import type { Decibels, Fraction } from '../quantities/dimensions.ts';
import { TONE_ASSUMPTIONS, type ToneAssumptions } from './tone-assumptions.ts';

/** What may stand before or behind a fan: an element, or a second fan turning the same or the other way. */
export type Neighbour = Disturbance | 'fan' | 'counter-fan';

/** Rise a touching neighbour causes on one side of a fan, by kind [dB]. */
export type NeighbourRises = Readonly<Record<Neighbour, Decibels>>;

/** A knot of the working-point term. */
export interface WorkingPointKnot {
  /** Flow over free delivery at the same speed [-]. */
  readonly flowShare: Fraction;
  /** Rise over free delivery [dB]. */
  readonly rise: Decibels;
  /** One-sigma uncertainty from this flow share up to the next knot [dB]. */
  readonly uncertainty: Decibels;
}

/**
 * Every number of the sound model that comes from judgement, to be set by who has measured better. Unless a
 * field says otherwise it is a model assumption without a published source.
 */
export interface SoundAssumptions {
  /** Rise of the A-weighted level with speed [dB per decade]. Source: VDI 2081 axial spectrum with 50 dB unweighted. */
  readonly speedExponent: Decibels;
  /** One-sigma uncertainty of it [dB per decade]. */
  readonly speedExponentUncertainty: Decibels;
  /** Least and most exponent believed of a fit through ratings [dB per decade]. */
  readonly speedExponentRange: { readonly least: Decibels; readonly most: Decibels };
  /** Least rise between neighbouring ratings; keeps the level rising with speed [dB per decade]. */
  readonly leastRise: Decibels;
  /** One-sigma scatter between ratings of one datasheet [dB]. */
  readonly ratingScatter: Decibels;
  /** Bearings, commutation, test room: added energetically to each running fan, at 1 m [dB]. */
  readonly fanFloor: Decibels;
  /** Rise of a fan in a panel over one hung freely; 0 if the rating was taken on a plenum [dB]. */
  readonly panelMounting: Decibels;
  /** Rise towards shut-off, ascending in flow share; held outside the knots. */
  readonly workingPoint: readonly WorkingPointKnot[];
  /** In stall, left of the pressure peak. */
  readonly stall: {
    /** Least rise [dB]. */
    readonly rise: Decibels;
    /** Width over which it grows to its full size, as a flow share, so that the level has no jump [-]. */
    readonly ramp: Fraction;
    /** Uncertainty of the working-point term there [dB]. */
    readonly uncertainty: Decibels;
  };
  /** Uncertainty of the working-point term of a fan driven beyond free delivery [dB]. */
  readonly overdrivenUncertainty: Decibels;
  /** Rise by a touching neighbour. */
  readonly installation: { readonly inlet: NeighbourRises; readonly outlet: NeighbourRises };
  /** Gap over fan size at which a neighbour's rise has fallen to 1/e [-]. */
  readonly gapScale: Fraction;
  /** Share of the second strongest neighbour on one side that counts [-]. */
  readonly secondNeighbour: Fraction;
  /** Most that all neighbours of a fan add [dB]. */
  readonly installationCap: Decibels;
  /**
   * Flow noise of an opening: LWA = constant + 10 lg S + lossFactor lg ζ + velocityFactor lg v [dB, m², m/s].
   * Source: the handbook law 10 + 10 lg S + 30 lg ζ + 60 lg v with its octave shape, A-weighted and fitted.
   */
  readonly opening: {
    readonly constant: Decibels;
    readonly lossFactor: Decibels;
    readonly velocityFactor: Decibels;
    /** Face velocity up to which there is no noise, and from which it counts fully [m/s]. */
    readonly velocityFade: { readonly from: number; readonly to: number };
    /** Loss coefficient up to which there is no noise, and from which it counts fully [-]. */
    readonly lossFade: { readonly from: number; readonly to: number };
    /** Velocity in sharp-edged holes from which they may whistle [m/s]. */
    readonly whistleVelocity: number;
  };
  /** Field that turns a sound power rating into pressure at 1 m: free takes off 11 dB, half 8 dB. */
  readonly powerField: 'free' | 'half';
  /** Declared maximum minus mean sound power [dB]. Source: ISO 9296, ECMA-109 (from memory). */
  readonly declaredAllowance: Decibels;
  /** Credit for the way out of the enclosure [dB]. */
  readonly attenuation: Decibels;
  /** Builds that differ by less are tied [dB]. Source: perception of level changes, 1 dB is not heard. */
  readonly tie: Decibels;
  /** Usual backgrounds [dB]. */
  readonly backgrounds: { readonly night: Decibels; readonly evening: Decibels; readonly day: Decibels };
  /** Level of silence, and how far below the background a sound is masked or borderline [dB]. */
  readonly audibility: {
    readonly silent: Decibels;
    readonly masked: Decibels;
    readonly maskedWithTone: Decibels;
    readonly borderline: Decibels;
  };
  /** Bands of levels at the listener, ascending; above the last it is loud [dB]. */
  readonly levelBands: readonly {
    readonly upTo: Decibels;
    readonly band: 'silent' | 'very-quiet' | 'quiet' | 'noticeable' | 'clear';
  }[];
  /** When fans may sound tonal. */
  readonly toneRisk: ToneAssumptions;
  /** One-sigma uncertainties [dB]. */
  readonly uncertainty: {
    /** Rating with stated basis, otherwise, and what an unstated basis adds. Customary tolerance (from memory). */
    readonly ratingStated: Decibels;
    readonly ratingUnstated: Decibels;
    readonly basisUnstated: Decibels;
    /** Share of the installation term [-], and the least of it [dB]. */
    readonly installationShare: Fraction;
    readonly installationLeast: Decibels;
    /** Flow noise of an opening; floor of a fan. */
    readonly opening: Decibels;
    readonly floor: Decibels;
    /** Common to all builds, so left out of comparisons; the background matters only to audibility. */
    readonly panelMounting: Decibels;
    readonly attenuation: Decibels;
    readonly background: Decibels;
  };
  /** Correlation of errors among fans of one model, and between models [-]. */
  readonly correlation: { readonly sameModel: Fraction; readonly otherModel: Fraction };
  /** Probability of being quieter from which it is clear, and probable [-]. */
  readonly verdict: { readonly clear: Fraction; readonly probable: Fraction };
}

/** The assumptions unless a user sets others. */
export const SOUND_ASSUMPTIONS: SoundAssumptions = {
  speedExponent: 55,
  speedExponentUncertainty: 5,
  speedExponentRange: { least: 40, most: 70 },
  leastRise: 1,
  ratingScatter: 1,
  fanFloor: 10,
  panelMounting: 2,
  workingPoint: [
    { flowShare: 0.15, rise: 6, uncertainty: 3.5 },
    { flowShare: 0.35, rise: 3, uncertainty: 2.5 },
    { flowShare: 0.5, rise: 0, uncertainty: 1.5 },
  ],
  stall: { rise: 3, ramp: 0.05, uncertainty: 3.5 },
  overdrivenUncertainty: 3,
  installation: {
    inlet: { guard: 1, mesh: 2, panel: 4, fins: 3, wall: 4, bar: 3, fan: 3, 'counter-fan': 5 },
    outlet: { guard: 0.5, mesh: 1, panel: 2, fins: 1.5, wall: 2, bar: 1, fan: 0, 'counter-fan': 1 },
  },
  gapScale: 0.15,
  secondNeighbour: 0.5,
  installationCap: 8,
  opening: {
    constant: 3.5,
    lossFactor: 30,
    velocityFactor: 67.6,
    velocityFade: { from: 0.8, to: 1.2 },
    lossFade: { from: 0.5, to: 0.6 },
    whistleVelocity: 8,
  },
  powerField: 'free',
  declaredAllowance: 3,
  attenuation: 0,
  tie: 1,
  backgrounds: { night: 25, evening: 30, day: 35 },
  audibility: { silent: 13, masked: 10, maskedWithTone: 14, borderline: 6 },
  levelBands: [
    { upTo: 13, band: 'silent' },
    { upTo: 18, band: 'very-quiet' },
    { upTo: 23, band: 'quiet' },
    { upTo: 28, band: 'noticeable' },
    { upTo: 35, band: 'clear' },
  ],
  toneRisk: TONE_ASSUMPTIONS,
  uncertainty: {
    ratingStated: 2,
    ratingUnstated: 3,
    basisUnstated: 2,
    installationShare: 0.5,
    installationLeast: 1,
    opening: 5,
    floor: 3,
    panelMounting: 2,
    attenuation: 3,
    background: 5,
  },
  correlation: { sameModel: 0.8, otherModel: 0.3 },
  verdict: { clear: 0.9, probable: 0.7 },
};
