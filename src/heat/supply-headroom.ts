import type { Fraction, Watts } from '../quantities/dimensions.ts';
import { SUSTAINED_SHARE } from './supply.ts';

/** How a supply stands a load. */
export type HeadroomVerdict = 'pass' | 'tight' | 'fail';

/** What is left of what a supply may give. */
export interface Headroom {
  /** What is asked [W]. */
  readonly load: Watts;
  /** What it may give [W]. */
  readonly allowed: Watts;
  /** Allowed less asked [W]; negative if it is too much. */
  readonly spare: Watts;
  /** The same over what is allowed [-]. */
  readonly share: Fraction;
  readonly verdict: HeadroomVerdict;
}

/** A peak that a supply must ride through. */
export interface PeakAllowance {
  /** Longest duration it holds for [s]. */
  readonly duration: number;
  /** Output over rating [-]. */
  readonly share: Fraction;
}

/** How much more than its rating a supply rides through: not more than that, or by its kind. */
export type PeakKind = 'none' | 'to 450 W' | 'above 450 W';

/**
 * Peaks that internal supplies must ride through, by duration; shortest first. Published: desktop supply design guide,
 * table of power excursions (units to 450 W; above that those with the connector for high power).
 */
export const PEAK_ALLOWANCES: Readonly<Record<PeakKind, readonly PeakAllowance[]>> = {
  none: [],
  'to 450 W': [
    { duration: 1e-4, share: 1.5 },
    { duration: 1e-3, share: 1.45 },
    { duration: 1e-2, share: 1.35 },
    { duration: 0.1, share: 1.1 },
  ],
  'above 450 W': [
    { duration: 1e-4, share: 2 },
    { duration: 1e-3, share: 1.8 },
    { duration: 1e-2, share: 1.6 },
    { duration: 0.1, share: 1.2 },
  ],
};

/** Headroom below which a load is tight [-]: what is left beyond the share that a supply may give for long. */
const TIGHT_BELOW: Fraction = 1 - SUSTAINED_SHARE;

/** Power of a fan while it starts over its power at full speed [-]. Model assumption, no source: two to three times. */
const START_FACTOR = 2.5;

function headroomOf(load: Watts, allowed: Watts): Headroom {
  const spare = allowed - load;
  const share = spare / allowed;
  // A load of exactly the rating, or one that leaves exactly the share, is on the better side but for rounding.
  const rounding = 1e-12;
  const within = share >= TIGHT_BELOW - rounding ? 'pass' : 'tight';
  return { load, allowed, spare, share, verdict: share < -rounding ? 'fail' : within };
}

/**
 * What is left of a supply's rating under a lasting load: tight if less than a fifth, fail if none.
 *
 * Source: 80 % rule, common practice.
 *
 * @param output direct current for long [W], ≥ 0: what is read at the wall times the efficiency, not over it
 * @param rating of the supply, direct current [W], > 0
 */
export function sustainedHeadroom(output: Watts, rating: Watts): Headroom {
  return headroomOf(output, rating);
}

/**
 * Output over rating that a supply rides through for a time [-]; 1 beyond the longest peak there is a figure for.
 *
 * Source: as the table says; between two durations the figure of the longer one holds.
 *
 * @param kind of supply; `none` if nothing is known of it
 * @param duration of the peak [s], > 0
 */
export function peakAllowance(kind: PeakKind, duration: number): Fraction {
  return PEAK_ALLOWANCES[kind].find((peak) => duration <= peak.duration * (1 + 1e-12))?.share ?? 1;
}

/**
 * What is left under a short peak: fail if it is more than the supply rides through. A peak is never tight, since what
 * is allowed is what every unit must bear.
 *
 * Source: as `peakAllowance`.
 *
 * @param peak direct current [W], ≥ 0
 * @param duration of the peak [s], > 0
 * @param rating of the supply [W], > 0
 * @param kind of supply
 */
export function peakHeadroom(peak: Watts, duration: number, rating: Watts, kind: PeakKind): Headroom {
  const found = headroomOf(peak, peakAllowance(kind, duration) * rating);
  return found.verdict === 'tight' ? { ...found, verdict: 'pass' } : found;
}

/** Fans of one model on a supply. */
export interface StartingFans {
  readonly count: number;
  /** Of one fan at full speed [W]. */
  readonly power: Watts;
}

/**
 * What fans take beyond their power at full speed while all of them start at once [W].
 *
 * Source: model assumption, no source; the factor is the caller's, or 2.5.
 *
 * @param fans on the supply
 * @param factor of power while starting over power at full speed [-], ≥ 1
 */
export function startingExcess(fans: readonly StartingFans[], factor: number = START_FACTOR): Watts {
  return fans.reduce((sum, { count, power }) => sum + count * power * (factor - 1), 0);
}

/** What a supply is asked to give. */
export interface SupplyLoad {
  /** For long [W], fans at full speed included. */
  readonly sustained: Watts;
  /** Short peaks beside that of starting fans. */
  readonly peaks: readonly {
    /** Peak over what lasts [-], ≥ 1; where a wall meter shows one figure a second usually 1.1 to 1.3 (assumption). */
    readonly factor: number;
    /** [s] */
    readonly duration: number;
  }[];
  readonly fans: readonly StartingFans[];
}

/** How a supply stands everything that is asked of it; the worst of all is the verdict. */
export interface SupplyHeadroom {
  readonly sustained: Headroom;
  /** In the order of the peaks. */
  readonly peaks: readonly Headroom[];
  /** With all fans starting on top of the lasting load: that takes about a second, which no table of peaks covers. */
  readonly starting: Headroom;
  readonly verdict: HeadroomVerdict;
}

const RANKS: readonly HeadroomVerdict[] = ['pass', 'tight', 'fail'];

/**
 * How a supply stands what lasts, short peaks and the start of its fans.
 *
 * Source: as `sustainedHeadroom`, `peakHeadroom` and `startingExcess`.
 *
 * @param load what is asked
 * @param rating of the supply, direct current [W], > 0
 * @param kind which peaks it rides through
 * @param startFactor of fans [-], ≥ 1
 */
export function supplyHeadroom(
  load: SupplyLoad,
  rating: Watts,
  kind: PeakKind,
  startFactor: number = START_FACTOR,
): SupplyHeadroom {
  const sustained = sustainedHeadroom(load.sustained, rating);
  const starts = load.sustained + startingExcess(load.fans, startFactor);
  const starting = peakHeadroom(starts, 1, rating, kind);
  // Peaks and starting fans may come together.
  const peaks = load.peaks.map(({ factor, duration }) =>
    peakHeadroom(starts + (factor - 1) * load.sustained, duration, rating, kind),
  );
  const all = [sustained, starting, ...peaks].map(({ verdict }) => RANKS.indexOf(verdict));
  return { sustained, peaks, starting, verdict: RANKS[Math.max(...all)] as HeadroomVerdict };
}
