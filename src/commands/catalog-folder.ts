import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Catalog, readCatalogs, type TextFile } from '../reading/catalog-file.ts';
import { loadCompiled } from '../reading/compiled-catalog.ts';
import { formatProblem } from '../reading/problem.ts';

/** The shipped catalog, beside the folder of the built program. */
export const SHIPPED_CATALOG = fileURLToPath(new URL('../catalog/', import.meta.url));
/** The same compiled, in the folder of the built program. */
export const COMPILED_CATALOG = fileURLToPath(new URL('./shipped-fans.json', import.meta.url));

/** Folder in the shipped catalog that holds what is no fan. */
const STOCK_FOLDER = 'stock';

/** Names of the catalog files in a folder, in the order in which they are read. */
export function familyFiles(folder: string): readonly string[] {
  return readdirSync(folder)
    .filter((name) => /\.ya?ml$/.test(name))
    .sort();
}

/** Files of the shipped catalog: families of fans, then stock. */
function shippedFiles(folder: string): readonly string[] {
  const stock = join(folder, STOCK_FOLDER);
  const names = existsSync(stock) ? familyFiles(stock).map((name) => join(STOCK_FOLDER, name)) : [];
  return [...familyFiles(folder), ...names];
}

/** The files of a catalog such as the shipped one, with their texts. */
export function readFamilies(folder: string): readonly TextFile[] {
  return shippedFiles(folder).map((name) => {
    const file = join(folder, name);
    return { file, text: readFileSync(file, 'utf8') };
  });
}

/** Tells one set of files from another, by names and contents. */
export function fingerprintOf(folder: string): string {
  const hash = createHash('sha256');
  for (const name of shippedFiles(folder))
    hash
      .update(name)
      .update('\0')
      .update(readFileSync(join(folder, name)));
  return hash.digest('hex');
}

/** The shipped catalog from its compiled form, or from its files if these have been edited since. */
export function shippedCatalog(): Catalog {
  const compiled = statSync(COMPILED_CATALOG, { throwIfNoEntry: false })
    ? loadCompiled(readFileSync(COMPILED_CATALOG, 'utf8'), fingerprintOf(SHIPPED_CATALOG))
    : undefined;
  if (compiled) return compiled;
  const read = readCatalogs(readFamilies(SHIPPED_CATALOG));
  if (read.ok) return read;
  throw new Error(`the shipped catalog has been spoilt\n${read.problems.map(formatProblem).join('\n')}`);
}
