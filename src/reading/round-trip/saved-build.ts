import type { Event } from 'js-yaml';
import { bankWords } from '../../enclosure/bank-words.ts';
import type { Build, Enclosure } from '../../enclosure/enclosure.ts';
import type { Catalog } from '../catalog-file.ts';
import { valueAt } from '../form-tree.ts';
import { name as nameForm } from '../name.ts';
import { readScenario } from '../scenario-file.ts';
import { MOST_NODES, parseYaml } from '../yaml-source.ts';
import { type MapPlace, mapAt, valueIndex } from './block-end.ts';
import { inlineYaml, scalarYaml } from './inline-yaml.ts';

/** A scenario with one more build, or why it cannot be had. */
export type SavedBuild =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly reason: string };

/** A scenario as it was read. */
export interface SavedInto {
  readonly file: string;
  readonly text: string;
  readonly enclosure: Enclosure;
  readonly catalog: Catalog;
}

const BUILDS = 'builds';

/**
 * What a build says of each place that has a choice.
 *
 * @param enclosure the build is of
 * @param build one option a place
 */
export function buildWords({ places }: Enclosure, build: Build): Readonly<Record<string, string>> {
  const entries = places.flatMap((place, index): [string, string][] => {
    if (place.options.length < 2) return [];
    const option = build[index] ?? 0;
    if (place.kind === 'bank') return [[place.id, bankWords(place.options[option] ?? null)]];
    return [[place.id, place.options[option]?.label ?? '']];
  });
  return Object.fromEntries(entries);
}

/** The way lines of a text end. */
function lineEnd(text: string): string {
  return /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';
}

/** Column of an offset, if only spaces stand before it on its line. */
function indentAt(text: string, offset: number): string {
  return /[ ]*$/.exec(text.slice(0, offset))?.[0] ?? '';
}

/** Puts lines behind the line an offset stands in. */
function lineBehind(text: string, offset: number, line: string): string {
  const end = lineEnd(text);
  const rest = /[\r\n]/.exec(text.slice(offset));
  if (!rest) return `${text}${end}${line}${end}`;
  const at = offset + rest.index;
  return `${text.slice(0, at)}${end}${line}${text.slice(at)}`;
}

function intoMap(text: string, map: MapPlace, entry: string): string {
  if (!map.flow) return lineBehind(text, map.end, `${indentAt(text, map.start)}${entry}`);
  const joined = map.empty ? ` ${entry} ` : `, ${entry}`;
  return `${text.slice(0, map.end)}${joined}${text.slice(map.end)}`;
}

function withEntry(text: string, events: readonly Event[], name: string, words: string): string | undefined {
  const entry = `${scalarYaml(name)}: ${words}`;
  const root = mapAt(text, events, 1);
  const builds = valueIndex(text, events, 1, BUILDS);
  if (builds !== undefined) {
    const map = mapAt(text, events, builds);
    return map && intoMap(text, map, entry);
  }
  if (!root) return undefined;
  if (root.flow) return intoMap(text, root, `${BUILDS}: { ${entry} }`);
  const indent = indentAt(text, root.start);
  const end = lineEnd(text);
  return lineBehind(text, root.end, `${end}${indent}${BUILDS}:${end}${indent}  ${entry}`);
}

function refused(reason: string): SavedBuild {
  return { ok: false, reason };
}

/** Whether a text says the same as another one, and has the build besides. */
function holds(after: unknown, before: unknown, name: string, words: unknown): boolean {
  const builds = valueAt(before, [BUILDS]);
  const wanted = {
    ...(before as object),
    [BUILDS]: { ...(typeof builds === 'object' ? builds : {}), [name]: words },
  };
  return sorted(after) === sorted(wanted);
}

/** A value as text; the order of keys says nothing. */
function sorted(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) => {
    if (typeof inner !== 'object' || inner === null || Array.isArray(inner)) return inner;
    return Object.fromEntries(Object.entries(inner).sort(([one], [other]) => (one < other ? -1 : 1)));
  });
}

/**
 * Puts a build under a name into the text of its scenario. Everything else stays byte for byte as it is; the result is
 * read again and must say the same, and the build besides.
 *
 * @param into the scenario
 * @param build one option a place
 * @param name the build is to have
 */
export function savedBuild(
  { file, text, enclosure, catalog }: SavedInto,
  build: Build,
  name: string,
): SavedBuild {
  const checked = nameForm.safeParse(name);
  if (!checked.success) return refused(`"${name}" cannot be the name of a build`);
  if (enclosure.builds.some(({ id }) => id === name)) return refused(`there is a build "${name}" already`);
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  const plain = text.slice(mark.length);
  const before = parseYaml(file, plain, MOST_NODES.scenario);
  if (!before.ok) return refused(before.problem.message);
  const words = buildWords(enclosure, build);
  const changed = withEntry(plain, before.source.events, name, inlineYaml(words));
  const line = `${scalarYaml(name)}: ${inlineYaml(words)}`;
  const byHand = `the build does not go into the file by itself; write under "${BUILDS}":\n  ${line}`;
  if (changed === undefined) return refused(byHand);
  const after = parseYaml(file, changed, MOST_NODES.scenario);
  if (!after.ok || !holds(after.source.value, before.source.value, name, words)) return refused(byHand);
  const read = readScenario(file, changed, catalog.fans, catalog.stock);
  const found = read.ok ? read.enclosure.builds.find(({ id }) => id === name) : undefined;
  if (!found || JSON.stringify(found.options) !== JSON.stringify(build)) return refused(byHand);
  return { ok: true, text: mark + changed };
}
