import type { FanModel } from '../fan/fan-model.ts';
import { SOUND_ASSUMPTIONS, type SoundAssumptions } from '../sound/sound-assumptions.ts';
import { readFan } from './fan-entry.ts';
import { familyForm, fanForm, provenance } from './fan-form.ts';
import { check, type Findings, isMap, itemsOf, keysOnly, placeFindings } from './findings.ts';
import { valueAt } from './form-tree.ts';
import { duplicate } from './name-findings.ts';
import type { Problem } from './problem.ts';
import { MOST_NODES, parseYaml, type YamlSource } from './yaml-source.ts';

/** The fans of one or several files, or everything that is wrong with them. */
export type CatalogOutcome =
  | { readonly ok: true; readonly fans: readonly FanModel[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A file by name and content. */
export interface TextFile {
  readonly file: string;
  readonly text: string;
}

const keysForm = keysOnly(familyForm);

/**
 * Reads one family of fans.
 *
 * @param file its name, for messages
 * @param text its content
 * @param sound how power ratings become pressure at 1 m
 * @returns fans in the order of the file
 */
export function readCatalog(
  file: string,
  text: string,
  sound: SoundAssumptions = SOUND_ASSUMPTIONS,
): CatalogOutcome {
  return readCatalogs([{ file, text }], sound);
}

/**
 * Reads several families of fans; an id may stand once in all of them.
 *
 * @param files names and contents
 * @param sound how power ratings become pressure at 1 m
 * @param known fans read before, whose ids are taken too
 * @returns the known fans, then those of the files in their order
 */
export function readCatalogs(
  files: readonly TextFile[],
  sound: SoundAssumptions = SOUND_ASSUMPTIONS,
  known: readonly FanModel[] = [],
): CatalogOutcome {
  const fans: FanModel[] = [...known];
  const problems: Problem[] = [];
  const owners = new Map<string, string>(known.map(({ id }) => [id, 'the shipped catalog']));
  for (const { file, text } of files) {
    const parsed = parseYaml(file, text, MOST_NODES.catalog);
    if (!parsed.ok) {
      problems.push(parsed.problem);
      continue;
    }
    const findings: Findings = [];
    fans.push(...readFamily(parsed.source, sound, owners, findings));
    if (findings.length > 0) problems.push(...placeFindings(parsed.source, findings));
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, fans };
}

function readFamily(
  source: YamlSource,
  sound: SoundAssumptions,
  owners: Map<string, string>,
  findings: Findings,
): readonly FanModel[] {
  const { value, file } = source;
  check(keysForm, value, [], findings);
  if (!isMap(value)) return [];
  for (const key of ['family', 'note'] as const) {
    if (value[key] !== undefined) check(familyForm.shape[key], value[key], [key], findings);
  }
  const given = value['provenance'];
  const origin = given === undefined ? undefined : check(provenance, given, ['provenance'], findings);
  const context = { provenance: origin ?? 'invented', sound };
  return itemsOf(valueAt(value, ['fans']), ['fans'], findings).flatMap((item, index) => {
    const path = ['fans', index];
    const fields = check(fanForm, item, path, findings);
    if (!fields) return [];
    const owner = owners.get(fields.fan);
    if (owner === file) findings.push(duplicate('fan', fields.fan, [...path, 'fan']));
    else if (owner !== undefined) findings.push(inOtherFile(fields.fan, owner, [...path, 'fan']));
    owners.set(fields.fan, file);
    const fan = readFan(fields, path, context, findings);
    return fan ? [fan] : [];
  });
}

function inOtherFile(id: string, owner: string, path: Problem['path']): Findings[number] {
  const message = `a fan of ${owner} is called "${id}" as well`;
  return { code: 'duplicate-name', path, at: 'value', message };
}
