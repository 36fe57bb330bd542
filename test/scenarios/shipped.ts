import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import type { FanModel } from '../../src/fan/fan-model.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import type { StockItem } from '../../src/reading/stock/stock-item.ts';

const root = resolve(import.meta.dirname, '../..');

function filesOf(folder: string): readonly { readonly file: string; readonly text: string }[] {
  return readdirSync(join(root, folder))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ file: name, text: readFileSync(join(root, folder, name), 'utf8') }));
}

/** Names of the shipped scenarios. */
export const scenarioFiles = filesOf('scenarios');

const shipped = readCatalogs([...filesOf('catalog'), ...filesOf('catalog/stock')]);
if (!shipped.ok) throw new Error('the shipped catalog has problems');

/** Every fan of the shipped catalog. */
export const shippedFans: readonly FanModel[] = shipped.fans;

/** Everything in it that is no fan. */
export const shippedStock: readonly StockItem[] = shipped.stock;

/** A shipped scenario, read with the shipped catalog. */
export function shippedScenario(name: string): Enclosure {
  const found = scenarioFiles.find(({ file }) => file === `${name}.yaml`);
  if (!found) throw new Error(`there is no scenario ${name}`);
  const read = readScenario(found.file, found.text, shippedFans, shippedStock);
  if (!read.ok) throw new Error(`${name} has problems`);
  return read.enclosure;
}
