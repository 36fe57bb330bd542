import { statSync } from 'node:fs';
import { join } from 'node:path';
import type { Enclosure } from '../enclosure/enclosure.ts';
import { type Catalog, readCatalogs } from '../reading/catalog-file.ts';
import type { Problem } from '../reading/problem.ts';
import type { Reading } from '../reading/readings.ts';
import { readScenario } from '../reading/scenario-file.ts';
import { SOUND_ASSUMPTIONS } from '../sound/sound-assumptions.ts';
import { familyFiles, shippedCatalog } from './catalog-folder.ts';
import { STANDARD_INPUT } from './console.ts';
import { fileProblem, type ReadText, readText, reasonOf } from './text-file.ts';

/** Which catalogs a command reads. */
export interface CatalogChoice {
  /** Files or folders of fan families and stock beside the shipped ones. */
  readonly catalog: readonly string[];
  /** Whether the shipped, invented fans are read. */
  readonly shipped: boolean;
  /** Whether a fan takes the place of an earlier one with its id. */
  readonly shadow: boolean;
}

/** What a command needs to begin. */
export type Input =
  | {
      readonly ok: true;
      readonly enclosure: Enclosure;
      readonly readings: readonly Reading[];
      readonly catalog: Catalog;
      /** The scenario as it was read. */
      readonly text: string;
      /** What is odd about the fans of the user's own files. */
      readonly doubts: readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What catalogs hold, or everything that is wrong with their files. */
export type CatalogInput =
  | { readonly ok: true; readonly catalog: Catalog; readonly doubts: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Catalog files of a folder, by name; a file stands for itself. */
function catalogFiles(path: string): readonly ReadText[] {
  try {
    if (path === STANDARD_INPUT || !statSync(path).isDirectory()) return [readText(path)];
    const names = familyFiles(path);
    if (names.length === 0)
      return [{ ok: false, problem: fileProblem(path, 'there is no catalog in this folder') }];
    return names.map((name) => readText(join(path, name)));
  } catch (error) {
    return [{ ok: false, problem: fileProblem(path, reasonOf(error)) }];
  }
}

/**
 * Reads all catalogs a command is given; every problem of every file is told.
 *
 * @param choice which catalogs
 */
export function readCatalogInput({ catalog, shipped, shadow }: CatalogChoice): CatalogInput {
  const known = shippedCatalog();
  const read = catalog.flatMap(catalogFiles);
  const unread = read.flatMap((entry) => (entry.ok ? [] : [entry.problem]));
  const files = read.flatMap((entry) => (entry.ok ? entry.files : []));
  const beside = { known: shipped ? known : { stock: known.stock }, shadow };
  const outcome = readCatalogs(files, SOUND_ASSUMPTIONS, beside);
  const problems = [...unread, ...(outcome.ok ? [] : outcome.problems)];
  if (!outcome.ok || problems.length > 0) return { ok: false, problems };
  const { fans, stock, doubts } = outcome;
  return { ok: true, catalog: { fans, stock }, doubts };
}

/**
 * Reads the scenario and all catalogs a command is given; every problem of every file is told.
 *
 * @param scenario path, or the name of standard input
 * @param choice which catalogs
 */
export function readInput(scenario: string, choice: CatalogChoice): Input {
  const streams = [scenario, ...choice.catalog].filter((file) => file === STANDARD_INPUT);
  if (streams.length > 1) {
    const message = 'standard input can be only one of the files';
    return { ok: false, problems: [fileProblem(STANDARD_INPUT, message)] };
  }
  const input = readCatalogInput(choice);
  const text = readText(scenario);
  const problems = [...(input.ok ? [] : input.problems), ...(text.ok ? [] : [text.problem])];
  if (!text.ok || !input.ok) return { ok: false, problems };
  const { catalog, doubts } = input;
  const [file] = text.files;
  if (!file) return { ok: false, problems };
  const read = readScenario(file.file, file.text, catalog.fans, catalog.stock);
  return read.ok ? { ...read, catalog, text: file.text, doubts } : read;
}
