import { posix } from 'node:path';
import type { SourceText } from './source-text.ts';
import { COMPUTED, specifiersOf } from './syntax.ts';

/**
 * The house, ground floor first. A room leans on itself and on lower storeys, never on a neighbour of its own
 * storey or on anything above.
 */
const storeys: readonly (readonly string[])[] = [
  ['quantities', 'numerics'],
  ['air'],
  ['elements'],
  ['fan'],
  ['airway'],
  ['heat', 'sound'],
  ['enclosure'],
  ['reading'],
  ['search'],
  ['bands'],
  ['questions'],
  ['presentation'],
  ['commands'],
  ['arguments'],
  ['main.ts', 'index.ts'],
];

/** Packages a room, or one file of it, may use; `node:` stands for all of Node's own modules. */
const packages: Readonly<Record<string, readonly string[]>> = {
  'quantities/written.ts': ['zod'],
  numerics: ['ml-matrix'],
  elements: ['zod'],
  reading: ['zod', 'js-yaml', 'csv-parse'],
  search: ['tinyqueue'],
  presentation: ['string-width'],
  commands: ['node:', 'picocolors', 'tinypool'],
  arguments: ['yargs'],
  'main.ts': ['yargs'],
};

function roomOf(path: string): string {
  return path.split('/')[0] ?? path;
}

function storeyOf(path: string): number {
  return storeys.findIndex((rooms) => rooms.includes(roomOf(path)));
}

/** `zod/v4` → `zod`, `@scope/name/part` → `@scope/name`, `node:fs/promises` → `node:`. */
function packageOf(specifier: string): string {
  if (specifier.startsWith('node:')) return 'node:';
  return specifier.split('/', specifier.startsWith('@') ? 2 : 1).join('/');
}

function mayUse(path: string, name: string): boolean {
  return [packages[path], packages[roomOf(path)]].some((allowed) => allowed?.includes(name));
}

function faultOf(path: string, specifier: string): string | undefined {
  if (specifier === COMPUTED) return 'imports a name that is only known when it runs';
  if (!specifier.startsWith('.')) {
    return mayUse(path, packageOf(specifier)) ? undefined : `may not use ${packageOf(specifier)}`;
  }
  const target = posix.join(posix.dirname(path), specifier);
  if (target.startsWith('..')) return `leaves src for ${specifier}`;
  if (storeyOf(target) < 0) return `leans on ${target}, which is not on the plan`;
  const inRoom = roomOf(target) === roomOf(path);
  return inRoom || storeyOf(target) < storeyOf(path) ? undefined : `leans on ${target}`;
}

/**
 * Everything in which source files leave the plan.
 *
 * @param files paths from `src` and contents
 * @returns a sentence for each fault, none if the house stands as drawn
 */
export function planFaults(files: readonly SourceText[]): readonly string[] {
  return files.flatMap((file) => {
    if (storeyOf(file.path) < 0) return [`${file.path} is not on the plan`];
    return specifiersOf(file).flatMap((specifier) => {
      const fault = faultOf(file.path, specifier);
      return fault === undefined ? [] : [`${file.path} ${fault}`];
    });
  });
}

/** Rooms and packages of the plan that no file lives in or uses any more. */
export function planLeftovers(files: readonly SourceText[]): readonly string[] {
  const rooms = storeys.flat().filter((room) => !files.some(({ path }) => roomOf(path) === room));
  const used = new Map(files.map((file) => [file.path, specifiersOf(file).map(packageOf)]));
  const unused = Object.entries(packages).flatMap(([place, names]) =>
    names
      .filter((name) => ![...used].some(([path, own]) => isIn(path, place) && own.includes(name)))
      .map((name) => `${place} does not use ${name}`),
  );
  return [...rooms.map((room) => `${room} is empty`), ...unused];
}

function isIn(path: string, place: string): boolean {
  return path === place || roomOf(path) === place;
}
