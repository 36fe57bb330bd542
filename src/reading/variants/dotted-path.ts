import { nearestName } from '../../quantities/nearest.ts';
import { isMap } from '../findings.ts';
import type { Path } from '../problem.ts';

/** Keys that name the items of a list, so that a path may call them by name. */
const NAMING_KEYS = ['part', 'leg', 'duty', 'reading', 'name', 'fan'] as const;

/** A path that was found, or why not. */
export type FoundPath =
  | { readonly ok: true; readonly path: Path }
  | { readonly ok: false; readonly message: string };

/** A step that may come next, by the text that names it. */
interface Way {
  readonly name: string;
  readonly step: string | number;
  readonly value: unknown;
}

function nameOf(item: unknown): string | undefined {
  if (!isMap(item)) return undefined;
  const key = NAMING_KEYS.find((each) => typeof item[each] === 'string');
  return key === undefined ? undefined : String(item[key]);
}

function waysFrom(value: unknown): readonly Way[] {
  if (Array.isArray(value)) {
    const items: readonly unknown[] = value;
    return items.flatMap((item, index) => {
      const name = nameOf(item);
      const byIndex = { name: String(index), step: index, value: item };
      return name === undefined ? [byIndex] : [{ ...byIndex, name }, byIndex];
    });
  }
  return isMap(value)
    ? Object.entries(value).map(([key, inner]) => ({ name: key, step: key, value: inner }))
    : [];
}

/** Names may hold points: the longest that fits is meant. */
function longestFit(value: unknown, rest: string): Way | undefined {
  return waysFrom(value)
    .filter(({ name }) => rest === name || rest.startsWith(`${name}.`))
    .reduce<Way | undefined>(
      (best, way) => (best && best.name.length >= way.name.length ? best : way),
      undefined,
    );
}

function notFound(rest: string, value: unknown, before: string): FoundPath {
  const [word = ''] = rest.split('.');
  const names = [...new Set(waysFrom(value).map(({ name }) => name))].filter((name) => !/^\d+$/.test(name));
  const near = nearestName(word, names);
  const where = before === '' ? 'in the scenario' : `under ${before}`;
  const hint = near
    ? `, did you mean "${near}"?`
    : names.length > 0
      ? `; there are: ${names.join(', ')}`
      : '';
  return { ok: false, message: `there is no "${word}" ${where}${hint}` };
}

/** Whether a step may be missing: a key of a map, a section of its own, anything of the assumptions. */
function mayBeMissing(
  value: unknown,
  rest: string,
  path: readonly (string | number)[],
  sections: readonly string[],
): boolean {
  const [word = ''] = rest.split('.');
  if (path.length === 0) return sections.includes(word) && (word === ASSUMPTIONS || rest === word);
  return isMap(value) && (path[0] === ASSUMPTIONS || !rest.includes('.'));
}

/** The section in which every number has a default, so that none need be written. */
const ASSUMPTIONS = 'assume';

/**
 * Finds what a path with points means in a file: keys, and items of lists by their names or numbers. The last step may
 * be a key that is not written, since a default may stand behind it; whether it may stand there the readers tell.
 *
 * @param written the whole file, as read
 * @param dotted such as `elements.front.hole` or `airway.legs.intake.recirculation`
 * @param sections keys that a whole file may have
 */
export function findPath(written: unknown, dotted: string, sections: readonly string[]): FoundPath {
  const path: (string | number)[] = [];
  let value = written;
  let rest = dotted.trim();
  while (rest !== '') {
    const way = longestFit(value, rest);
    if (!way) {
      if (!mayBeMissing(value, rest, path, sections)) return notFound(rest, value, path.join('.'));
      return { ok: true, path: [...path, ...rest.split('.')] };
    }
    path.push(way.step);
    value = way.value;
    rest = rest.slice(way.name.length + 1);
  }
  if (path.length === 0) return { ok: false, message: 'the path is empty' };
  return { ok: true, path };
}
