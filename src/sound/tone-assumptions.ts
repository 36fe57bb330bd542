import type { Fraction } from '../quantities/dimensions.ts';

/** A range, ends included. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Every number of the judgement of tones; each is a model assumption without a published source. */
export interface ToneAssumptions {
  /** Blade-pass frequencies the ear picks out [Hz]. */
  readonly bladePass: Span;
  /** A neighbour on the inlet within this share of the fan size counts [-]. */
  readonly inletGap: Fraction;
  /** Fans in series within this share of the fan size touch [-]. */
  readonly touching: Fraction;
  /** Beats heard as fluctuation [Hz]. */
  readonly beat: Span;
  /**
   * By how much the speeds of two fans told to run alike differ, least and most [-]: datasheets allow 10 %, from
   * memory. Fans held at their speeds by a controller differ by far less.
   */
  readonly speedDifference: Span;
  /** Slower beats are not heard as such [Hz]. */
  readonly locked: number;
  /** Flow share below which loading brings tones [-]. */
  readonly flowShare: Fraction;
  /** Points from which the risk is medium and high [-]. */
  readonly medium: number;
  readonly high: number;
}

/** The assumptions unless a user sets others. */
export const TONE_ASSUMPTIONS: ToneAssumptions = {
  bladePass: { from: 150, to: 2000 },
  inletGap: 0.25,
  touching: 0.05,
  beat: { from: 0.5, to: 20 },
  speedDifference: { from: 0.03, to: 0.1 },
  locked: 0.3,
  flowShare: 0.4,
  medium: 2,
  high: 3,
};
