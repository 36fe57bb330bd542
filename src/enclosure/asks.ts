import type { Amperes, Decibels, Metres, Volts, Watts } from '../quantities/dimensions.ts';

/** Most depth that the fans of one leg may have together. */
export interface DepthAsk {
  /** Index into `legs`. */
  readonly leg: number;
  readonly most: Metres;
}

/** What is asked of a build beside the limits of its parts. What is absent is not asked. */
export interface Asks {
  /** Most that all fans together may cost, in the user's currency; a build with a fan of unknown price breaks it. */
  readonly price?: number;
  /** Most electrical power of all fans at full speed [W]. */
  readonly ratedPower?: Watts;
  /** Most different models of fans [-]. */
  readonly models?: number;
  /** Most depth of the fans of a leg. */
  readonly depths?: readonly DepthAsk[];
  /** Highest level at the listener, of the kind a ranking goes by [dB]. */
  readonly level?: Decibels;
  /** Whether every limit must hold at full speed with any one fan dead. */
  readonly deadFan?: boolean;
  /** Whether no fan may work left of the peak of its curve. */
  readonly noStall?: boolean;
  /** Whether air may run backwards through no place with fans. */
  readonly noBackFlow?: boolean;
  /** Most points of tone risk of any bank at the speeds found [-]. */
  readonly tonePoints?: number;
}

/** What one fan header feeds: its banks run at one share of their full speeds. */
export interface Header {
  readonly id: string;
  /** Indices of places for fans. */
  readonly places: readonly number[];
  /** What it may give at full speed; anything if absent. */
  readonly current?: { readonly most: Amperes; readonly voltage: Volts };
}
