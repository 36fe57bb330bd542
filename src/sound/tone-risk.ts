import type { Fraction } from '../quantities/dimensions.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';
import type { Span } from './tone-assumptions.ts';

/** What speaks for or against a fan sounding tonal, as far as known without a spectrum. */
export interface ToneCircumstances {
  /** Blade-pass frequency [Hz]; absent if the blade number is unknown. */
  readonly bladePass?: number;
  /** Gap over fan size of the nearest obstacle on the inlet [-]; absent if the inlet is clear. */
  readonly inletGap?: Fraction;
  /** Beat frequencies with other fans [Hz]. */
  readonly beats: readonly number[];
  /** Flow over free delivery [-]. */
  readonly flowShare: Fraction;
  /** True for a pair in series that touches or turns opposite ways. */
  readonly closeSeries: boolean;
  /** True if the fan is known to have as many struts as blades. */
  readonly strutsMatchBlades: boolean;
}

/** Tone risk as a code, with the points behind it. */
export interface ToneRisk {
  readonly risk: 'low' | 'medium' | 'high';
  /** Circumstances that speak for a tone, 0 to 6. */
  readonly points: number;
}

function within(value: number, range: Span): boolean {
  return value >= range.from && value <= range.to;
}

/**
 * Risk that a fan sounds tonal. It is shown and may break ties; it is never added to a level.
 *
 * Source: model assumption, no source for the weighing; the circumstances are those of the literature on
 * rotor-strut tones, inflow disturbance and beating.
 *
 * @param circumstances what is known
 * @param assumptions limits in `toneRisk`
 */
export function toneRisk(circumstances: ToneCircumstances, assumptions: SoundAssumptions): ToneRisk {
  const limits = assumptions.toneRisk;
  const { bladePass, inletGap, beats, flowShare, closeSeries, strutsMatchBlades } = circumstances;
  const points = [
    bladePass !== undefined && within(bladePass, limits.bladePass),
    inletGap !== undefined && inletGap <= limits.inletGap,
    beats.some((frequency) => within(frequency, limits.beat)),
    flowShare < limits.flowShare,
    closeSeries,
    strutsMatchBlades,
  ].filter(Boolean).length;
  if (points >= limits.high) return { risk: 'high', points };
  return { risk: points >= limits.medium ? 'medium' : 'low', points };
}
