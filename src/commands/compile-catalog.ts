import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { plain } from '../presentation/paint.ts';
import { problemView } from '../presentation/problem-view.ts';
import { readCatalogs } from '../reading/catalog-file.ts';
import { compileCatalog } from '../reading/compiled-catalog.ts';
import { SCHEMA_NAMES, schemaText } from '../reading/editor/editor-schemas.ts';
import { COMPILED_CATALOG, fingerprintOf, readFamilies, SHIPPED_CATALOG } from './catalog-folder.ts';
import { EXIT } from './console.ts';

// A step of the build: reads the shipped catalog once, so that no start of the program has to.
const read = readCatalogs(readFamilies(SHIPPED_CATALOG));
if (read.ok) writeFileSync(COMPILED_CATALOG, compileCatalog(read, fingerprintOf(SHIPPED_CATALOG)));
else {
  process.stderr.write(problemView(read.problems, { paint: plain }));
  process.exitCode = EXIT.badInput;
}

// Editors may point at the schemas in the package.
const SCHEMAS = fileURLToPath(new URL('./schema/', import.meta.url));
mkdirSync(SCHEMAS, { recursive: true });
for (const name of SCHEMA_NAMES) writeFileSync(`${SCHEMAS}${name}.json`, schemaText(name));
