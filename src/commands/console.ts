import picocolors from 'picocolors';
import { type Paint, plain } from '../presentation/paint.ts';

/** Exit codes of the program; documented in the README and never reused for anything else. */
export const EXIT = {
  answered: 0,
  noneAdequate: 1,
  badInput: 2,
  internal: 70,
  interrupted: 130,
} as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Name of standard input among the files a command is given. */
export const STANDARD_INPUT = '<standard input>';

/** Options every command takes. */
export interface CommonOptions {
  readonly json: boolean;
  readonly color: boolean | undefined;
  readonly wide: boolean;
  readonly quiet: boolean;
}

/** Where a command writes. */
export interface Console {
  /** The answer. */
  readonly out: (text: string) => void;
  /** Messages beside the answer; left out if the user wants quiet. */
  readonly note: (text: string) => void;
  /** What went wrong; always told. */
  readonly fault: (text: string) => void;
  readonly paint: Paint;
  /** Columns of the terminal; absent if there is none or all columns are wanted. */
  readonly width: number | undefined;
  /** Whether a person sees the messages. */
  readonly watched: boolean;
}

/** Whether a stream gets colours: told so, told not to, a terminal that can. */
function coloured(stream: NodeJS.WriteStream, wanted: boolean | undefined): boolean {
  if (wanted !== undefined) return wanted;
  if (process.env['NO_COLOR']) return false;
  if (process.env['FORCE_COLOR']) return process.env['FORCE_COLOR'] !== '0';
  return stream.isTTY === true && process.env['TERM'] !== 'dumb';
}

function paintFor(stream: NodeJS.WriteStream, wanted: boolean | undefined): Paint {
  if (!coloured(stream, wanted)) return plain;
  const colours = picocolors.createColors(true);
  return { good: colours.green, bad: colours.red, faint: colours.dim, strong: colours.bold };
}

/** The process as a console. A reader that goes away early is no error. */
export function openConsole(options: CommonOptions): Console {
  const { stdout, stderr } = process;
  return {
    out: (text) => void stdout.write(text),
    note: (text) => {
      if (!options.quiet) stderr.write(text);
    },
    fault: (text) => void stderr.write(text),
    paint: paintFor(stdout, options.color),
    width: options.wide || !stdout.isTTY ? undefined : stdout.columns || undefined,
    watched: stderr.isTTY === true && !options.quiet && !options.json,
  };
}
