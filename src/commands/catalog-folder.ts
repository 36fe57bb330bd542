import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FanModel } from '../fan/fan-model.ts';
import type { TextFile } from '../reading/catalog-file.ts';
import { loadCompiled } from '../reading/compiled-catalog.ts';

/** The shipped catalog, beside the folder of the built program. */
export const SHIPPED_CATALOG = fileURLToPath(new URL('../catalog/', import.meta.url));
/** The same compiled, in the folder of the built program. */
export const COMPILED_CATALOG = fileURLToPath(new URL('./shipped-fans.json', import.meta.url));

/** Names of the fan families in a folder, in the order in which they are read. */
export function familyFiles(folder: string): readonly string[] {
  return readdirSync(folder)
    .filter((name) => /\.ya?ml$/.test(name))
    .sort();
}

/** The families of a folder with their texts. */
export function readFamilies(folder: string): readonly TextFile[] {
  return familyFiles(folder).map((name) => {
    const file = join(folder, name);
    return { file, text: readFileSync(file, 'utf8') };
  });
}

/** Tells one set of families from another, by names and contents. */
export function fingerprintOf(folder: string): string {
  const hash = createHash('sha256');
  for (const name of familyFiles(folder))
    hash
      .update(name)
      .update('\0')
      .update(readFileSync(join(folder, name)));
  return hash.digest('hex');
}

/**
 * Fans of the shipped catalog from their compiled form; undefined if there is none or the catalog has been edited
 * since.
 */
export function shippedFans(): readonly FanModel[] | undefined {
  if (!statSync(COMPILED_CATALOG, { throwIfNoEntry: false })) return undefined;
  return loadCompiled(readFileSync(COMPILED_CATALOG, 'utf8'), fingerprintOf(SHIPPED_CATALOG));
}
