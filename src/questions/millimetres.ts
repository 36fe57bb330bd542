import type { Metres } from '../quantities/dimensions.ts';

/**
 * A length in words: "5 mm", "92.5 mm".
 *
 * @param length [m]
 */
export function millimetres(length: Metres): string {
  return `${Number((1000 * length).toFixed(1))} mm`;
}
