import { readFileSync } from 'node:fs';
import { dirname, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { schemaText } from '../reading/editor/editor-schemas.ts';
import { refuse } from './command.ts';
import { EXIT, type ExitCode, openConsole, STANDARD_INPUT } from './console.ts';
import type { StarterShape } from './starters.ts';
import { fileProblem } from './text-file.ts';
import { VERSION } from './version.ts';
import { writeWhole } from './written-file.ts';

/** Options of `new`. */
export interface NewOptions {
  readonly file: string;
  readonly shape: StarterShape;
  /** Where the schema for editors goes; it is not written if absent. */
  readonly schema: string | undefined;
  /** Whether files that are there may be replaced. */
  readonly force: boolean;
  readonly quiet: boolean;
}

/** The scenarios to begin with, beside the folder of the built program. */
const STARTERS = fileURLToPath(new URL('../scenarios/starters/', import.meta.url));

/** The path of the schema as the scenario sees it, with slashes on every system. */
function schemaLine(file: string, schema: string): string {
  const path = relative(dirname(file), schema).split(sep).join('/');
  return `# yaml-language-server: $schema=${path.startsWith('.') ? path : `./${path}`}\n`;
}

/** Writes a scenario to begin with, and the schema for editors if it is wanted. */
export async function run({ file, shape, schema, force, quiet }: NewOptions): Promise<ExitCode> {
  const options = { json: false, color: undefined, wide: false, quiet };
  const console = openConsole(options);
  const meta = { version: VERSION, command: 'new' };
  const starter = readFileSync(`${STARTERS}${shape}.yaml`, 'utf8');
  if (file === STANDARD_INPUT) {
    console.out(starter);
    return EXIT.answered;
  }
  if (schema !== undefined && relative(file, schema) === '') {
    return refuse(
      [fileProblem(schema, 'the scenario and the schema cannot be one file')],
      options,
      console,
      meta,
    );
  }
  const text = schema === undefined ? starter : schemaLine(file, schema) + starter;
  const failed =
    writeWhole(file, text, force) ??
    (schema === undefined ? undefined : writeWhole(schema, schemaText('scenario'), force));
  if (failed) return refuse([failed], options, console, meta);
  console.note(`${file} is written. Change it, then: hushwright rank ${file}\n`);
  return EXIT.answered;
}
