import type { FanModel } from '../fan/fan-model.ts';
import { SOUND_ASSUMPTIONS, type SoundAssumptions } from '../sound/sound-assumptions.ts';
import { fanDoubts } from './doubts/fan-doubts.ts';
import { type FanContext, readFan } from './fan-entry.ts';
import { familyForm, fanForm, provenance } from './fan-form.ts';
import { check, type Findings, isMap, itemsOf, keysOnly, placeFindings } from './findings.ts';
import { valueAt } from './form-tree.ts';
import { duplicate } from './name-findings.ts';
import type { Path, Problem } from './problem.ts';
import { readStock } from './stock/stock-file.ts';
import type { StockItem } from './stock/stock-item.ts';
import { MOST_NODES, parseYaml, type YamlSource } from './yaml-source.ts';

/** What catalogs hold: fans, and other things that are sold ready-made. */
export interface Catalog {
  readonly fans: readonly FanModel[];
  readonly stock: readonly StockItem[];
}

/** What one or several files hold, with what is odd about it, or everything that is wrong with them. */
export type CatalogOutcome =
  | (Catalog & { readonly ok: true; readonly doubts: readonly Problem[] })
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A file by name and content. */
export interface TextFile {
  readonly file: string;
  readonly text: string;
}

/** What files are read beside. */
export interface Beside {
  /** What was read before, and is taken too. */
  readonly known?: Partial<Catalog>;
  /** Whether a fan takes the place of an earlier one with its id, from another file; else that is a problem. */
  readonly shadow?: boolean;
}

const keysForm = keysOnly(familyForm);

/** Name of what was read before, in messages. */
const SHIPPED = 'the shipped catalog';

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
 * Whether a text is that of a catalog and not of a scenario, told from its first keys.
 *
 * @param text of a file
 */
export function isCatalog(text: string): boolean {
  return /^(?:\uFEFF)?(?:family|stock):/m.test(text) && !/^(?:airway|elements):/m.test(text);
}

/** What is gathered while files are read. */
interface Gathered {
  /** Fans by id, each with the file it comes from. */
  readonly fans: Map<string, { readonly fan?: FanModel; readonly file: string }>;
  readonly stock: StockItem[];
  readonly itemFiles: Map<string, string>;
  readonly sound: SoundAssumptions;
  readonly shadow: boolean;
}

/**
 * Reads several families of fans and files of stock; an id may stand once in all of them.
 *
 * @param files names and contents
 * @param sound how power ratings become pressure at 1 m
 * @param beside what was read before, and what happens to a fan whose id is taken
 * @returns what was known, then what the files hold in their order
 */
export function readCatalogs(
  files: readonly TextFile[],
  sound: SoundAssumptions = SOUND_ASSUMPTIONS,
  { known = {}, shadow = false }: Beside = {},
): CatalogOutcome {
  const gathered: Gathered = {
    fans: new Map((known.fans ?? []).map((fan) => [fan.id, { fan, file: SHIPPED }])),
    stock: [...(known.stock ?? [])],
    itemFiles: new Map((known.stock ?? []).map(({ id }) => [id, SHIPPED])),
    sound,
    shadow,
  };
  const problems: Problem[] = [];
  const doubts: Problem[] = [];
  for (const { file, text } of files) {
    const parsed = parseYaml(file, text, MOST_NODES.catalog);
    if (!parsed.ok) {
      problems.push(parsed.problem);
      continue;
    }
    const findings: Findings = [];
    const odd: Findings = [];
    readFile(parsed.source, gathered, findings, odd);
    if (findings.length > 0) problems.push(...placeFindings(parsed.source, findings));
    if (odd.length > 0) doubts.push(...placeFindings(parsed.source, odd));
  }
  if (problems.length > 0) return { ok: false, problems };
  const fans = [...gathered.fans.values()].flatMap(({ fan }) => (fan ? [fan] : []));
  return { ok: true, fans, stock: gathered.stock, doubts };
}

function readFile(source: YamlSource, gathered: Gathered, findings: Findings, odd: Findings): void {
  if (isMap(source.value) && Object.hasOwn(source.value, 'stock')) {
    gathered.stock.push(...readStock(source, gathered.itemFiles, findings));
  } else {
    readFamily(source, gathered, findings, odd);
  }
}

function readFamily(source: YamlSource, gathered: Gathered, findings: Findings, odd: Findings): void {
  const { value, file } = source;
  check(keysForm, value, [], findings);
  if (!isMap(value)) return;
  for (const key of ['family', 'note'] as const) {
    if (value[key] !== undefined) check(familyForm.shape[key], value[key], [key], findings);
  }
  const given = value['provenance'];
  const origin = given === undefined ? undefined : check(provenance, given, ['provenance'], findings);
  const context = { provenance: origin ?? 'invented', sound: gathered.sound };
  for (const [index, item] of itemsOf(valueAt(value, ['fans']), ['fans'], findings).entries()) {
    readItem({ item, path: ['fans', index], file }, context, gathered, { findings, odd });
  }
}

function readItem(
  { item, path, file }: { readonly item: unknown; readonly path: Path; readonly file: string },
  context: FanContext,
  gathered: Gathered,
  { findings, odd }: { readonly findings: Findings; readonly odd: Findings },
): void {
  const fields = check(fanForm, item, path, findings);
  if (!fields) return;
  const earlier = gathered.fans.get(fields.fan);
  if (earlier && !(gathered.shadow && earlier.file !== file)) {
    findings.push(takenId(fields.fan, earlier.file, file, [...path, 'fan']));
  }
  const fan = readFan(fields, path, context, findings);
  gathered.fans.set(fields.fan, { file, ...(fan ? { fan } : {}) });
  if (fan) odd.push(...fanDoubts({ fan, fields, written: item, path }));
}

function takenId(id: string, owner: string, file: string, path: Path): Findings[number] {
  if (owner === file) return duplicate('fan', id, path);
  const message = `a fan of ${owner} is called "${id}" as well`;
  const expected = 'another id; or give --shadow, and this fan takes the place of the other';
  return { code: 'duplicate-name', path, at: 'value', message, expected };
}
