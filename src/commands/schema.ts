import { type SchemaName, schemaText } from '../reading/editor/editor-schemas.ts';
import { refuse } from './command.ts';
import { EXIT, type ExitCode, openConsole } from './console.ts';
import { VERSION } from './version.ts';
import { writeWhole } from './written-file.ts';

/** Options of `schema`. */
export interface SchemaOptions {
  readonly of: SchemaName;
  /** File it is written to; standard output if absent. */
  readonly to: string | undefined;
  /** Whether a file that is there may be replaced. */
  readonly force: boolean;
  readonly quiet: boolean;
}

/** Writes the JSON Schema of a kind of file, for editors. */
export async function run({ of, to, force, quiet }: SchemaOptions): Promise<ExitCode> {
  const options = { json: false, color: undefined, wide: false, quiet };
  const console = openConsole(options);
  const text = schemaText(of);
  if (to === undefined) {
    console.out(text);
    return EXIT.answered;
  }
  const failed = writeWhole(to, text, force);
  if (failed) return refuse([failed], options, console, { version: VERSION, command: 'schema' });
  console.note(
    `${to} is written. First line of a file beside it, for editors:\n# yaml-language-server: $schema=${to}\n`,
  );
  return EXIT.answered;
}
