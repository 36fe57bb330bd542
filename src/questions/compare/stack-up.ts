import { bankIn } from '../../enclosure/stages.ts';
import type { Metres } from '../../quantities/dimensions.ts';
import type { Variant } from './variants.ts';

/** Room along the stream that the fans of a variant take. */
export interface StackUp {
  /** Depth of the fans [m]. */
  readonly fans: Metres;
  /** Depth of their places that is left over [m]; negative if they do not fit. */
  readonly left: Metres;
}
/**
 * Room along the stream that the fans of a variant take, and what is left of it.
 *
 * @param variant with its fans
 */
export function stackUp({ enclosure, build, stack }: Variant): StackUp {
  let fans = 0;
  let depth = 0;
  for (const index of stack) {
    const place = enclosure.places[index];
    if (place?.kind === 'bank') depth += place.depth;
    fans += bankIn(enclosure, build, index)?.fan.depth ?? 0;
  }
  return { fans, left: depth - fans };
}
