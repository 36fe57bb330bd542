import type { Decibels, Fraction, KelvinDifference } from '../quantities/dimensions.ts';

/**
 * How far off figures of one sort may be: half the width of the band that holds the true value nine times in ten. A
 * share p [-] is a factor: the true value lies between 1/(1 + p) and 1 + p times the figure.
 */
export interface Stated {
  /** Of all that are not named [-]. */
  readonly usual: Fraction;
  /** Of those with a name of their own [-]. */
  readonly of: Readonly<Record<string, Fraction>>;
}

/** How far off each figure of a scenario may be; every number is meant as {@link Stated} says. */
export interface Uncertainties {
  /** Room temperature [K]. */
  readonly room: KelvinDifference;
  /** Heat of parts, by part. */
  readonly heat: Stated;
  /** Fixed resistances, by part. */
  readonly fixed: Stated;
  /** Paste and pads, by part. */
  readonly paste: Stated;
  /** Base plates, by part. */
  readonly base: Stated;
  /** Heat pipes, by part. */
  readonly pipes: Stated;
  /** Resistance of fins and sinks, by element. */
  readonly fins: Stated;
  /** The same where a running fan stands right before them, unless the element is named [-]. */
  readonly finsBehindFan: Fraction;
  /** Losses of elements; the usual of each kind is its own. */
  readonly loss: { readonly usual?: Fraction; readonly of: Readonly<Record<string, Fraction>> };
  /** What walls let through, by chamber. */
  readonly skin: Stated;
  /** Share of the exhaust that is drawn in again, by leg. */
  readonly recirculation: Stated;
  /** Flow that a fan gives through a given resistance, by where its curve comes from, and by fan. */
  readonly curve: {
    readonly measured: Fraction;
    readonly datasheet: Fraction;
    /** From box figures; the curve's own bands if absent. */
    readonly box?: Fraction;
    readonly of: Readonly<Record<string, Fraction>>;
  };
  /** How much less flow a fan may give at half speed than the fan laws say; in proportion at other speeds [-]. */
  readonly slowFan: Fraction;
  /** Electrical power of fans. */
  readonly fanPower: Fraction;
  /** Noise ratings of fans, and by fan [dB]; the usual is told by the sound assumptions if absent. */
  readonly rating: { readonly usual?: Decibels; readonly of: Readonly<Record<string, Decibels>> };
}

/**
 * The uncertainties unless a user states others. Model assumptions, no source, but for these: a curve of a datasheet as
 * the coarsest tolerance grade of ISO 13348 (AN4, flow ±10 %, from memory); a measured one as a careful test on a rig.
 */
export const UNCERTAINTIES: Uncertainties = {
  room: 1,
  heat: { usual: 0.1, of: {} },
  fixed: { usual: 0.2, of: {} },
  paste: { usual: 0.3, of: {} },
  base: { usual: 0.1, of: {} },
  pipes: { usual: 0.6, of: {} },
  fins: { usual: 0.1, of: {} },
  finsBehindFan: 0.25,
  loss: { of: {} },
  skin: { usual: 0.4, of: {} },
  recirculation: { usual: 0.5, of: {} },
  curve: { measured: 0.03, datasheet: 0.1, of: {} },
  slowFan: 0.05,
  fanPower: 0.15,
  rating: { of: {} },
};

/**
 * How far off a figure may be [-].
 *
 * @param stated for figures of its sort
 * @param name what it belongs to
 */
export function statedFor({ usual, of }: Stated, name: string): Fraction {
  return Object.hasOwn(of, name) ? (of[name] as number) : usual;
}
