import { isMap } from '../findings.ts';
import type { Path } from '../problem.ts';

/** A value that is to stand at a path of a file in place of what is written there. */
export interface Setting {
  readonly path: Path;
  /** As it would be written; undefined takes the key away. */
  readonly value: unknown;
}

/**
 * What a file holds with some values written differently. Maps that are missing on the way are made; what is written
 * is not changed.
 *
 * @param written the whole file, as read
 * @param settings applied one after the other
 */
export function withSettings(written: unknown, settings: readonly Setting[]): unknown {
  return settings.reduce((value, { path, value: set }) => withValue(value, path, set), written);
}

function withValue(value: unknown, path: Path, set: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return set;
  if (Array.isArray(value)) {
    const index = Number(step);
    if (rest.length === 0 && set === undefined) return value.filter((_, at) => at !== index);
    return value.map((item: unknown, at) => (at === index ? withValue(item, rest, set) : item));
  }
  const map = isMap(value) ? value : {};
  if (rest.length > 0 || set !== undefined) {
    return { ...map, [step]: withValue(Object.hasOwn(map, step) ? map[step] : undefined, rest, set) };
  }
  return Object.fromEntries(Object.entries(map).filter(([key]) => key !== String(step)));
}
