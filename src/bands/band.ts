import type { Response } from './response.ts';

/** A result and the band that holds the true value nine times in ten. */
export interface Band {
  /** The true value is below this with a probability of 5 %. */
  readonly low: number;
  /** With everything as stated. */
  readonly expected: number;
  /** The true value is above this with a probability of 5 %. */
  readonly high: number;
}

/** Half-widths of the 90 % band below and above a value, both ≥ 0. */
export interface HalfWidths {
  readonly below: number;
  readonly above: number;
}

/**
 * Joins independent displacements: those downwards by root of squares, and those upwards.
 *
 * Source: law of propagation for independent inputs (JCGM 100, 5.1.2), for each side by itself; exact for linear
 * dependences on normal inputs, and for one monotone dependence of any shape.
 *
 * @param displacements for each input what its two ends move the result by, in any order
 */
export function joined(displacements: readonly (readonly [number, number])[]): HalfWidths {
  let below = 0;
  let above = 0;
  for (const [one, other] of displacements) {
    below += Math.min(0, one, other) ** 2;
    above += Math.max(0, one, other) ** 2;
  }
  return { below: Math.sqrt(below), above: Math.sqrt(above) };
}

/**
 * Band of one result of a response.
 *
 * Source: as {@link joined}.
 *
 * @param response of a build
 * @param index of the result
 */
export function bandAt({ expected, effects }: Response, index: number): Band {
  const value = expected[index] as number;
  const { below, above } = joined(
    effects.map((effect) => [effect.below[index] as number, effect.above[index] as number] as const),
  );
  return { low: value - below, expected: value, high: value + above };
}

/**
 * Bands of all results of a response, in their order.
 *
 * Source: as {@link joined}.
 *
 * @param response of a build
 */
export function bandsOf(response: Response): readonly Band[] {
  return Array.from(response.expected, (_, index) => bandAt(response, index));
}
