import type { Enclosure } from '../enclosure/enclosure.ts';
import { type Document, type Meta, toText } from '../presentation/document.ts';
import { doubtNote, withDoubts } from '../presentation/doubts.ts';
import { problemsDocument } from '../presentation/json.ts';
import { problemView } from '../presentation/problem-view.ts';
import type { Catalog } from '../reading/catalog-file.ts';
import type { Problem } from '../reading/problem.ts';
import type { ScenarioSource } from '../reading/variants/scenario-source.ts';
import { type CommonOptions, type Console, EXIT, type ExitCode, openConsole } from './console.ts';
import { readInput } from './input.ts';
import { VERSION } from './version.ts';

/** Options of every command that reads a scenario. */
export interface ScenarioOptions extends CommonOptions {
  readonly scenario: string;
  /** Files or folders of fan families beside the shipped ones. */
  readonly catalog: readonly string[];
  /** Whether the shipped, invented catalog is read. */
  readonly shipped: boolean;
  /** Whether a fan takes the place of an earlier one with its id. */
  readonly shadow: boolean;
}

/** What a command works with once its files have been read. */
export interface Work {
  readonly enclosure: Enclosure;
  readonly catalog: Catalog;
  /** The scenario as it was read. */
  readonly text: string;
  /** What is odd about the user's own fans; warned of in documents. */
  readonly doubts: readonly Problem[];
  readonly console: Console;
  readonly meta: Meta;
  /** Writes a document if JSON is wanted, else the text. */
  readonly answer: (document: () => Document, text: () => string) => void;
}

/** What the scenario of a command is read from, for questions that read it again with other values. */
export function sourceOf({ catalog, text }: Work, { scenario }: ScenarioOptions): ScenarioSource {
  return { file: scenario, text, fans: catalog.fans, stock: catalog.stock };
}

/** Says all that is wrong with the input, where it is expected. */
export function refuse(
  problems: readonly Problem[],
  options: CommonOptions,
  console: Console,
  meta: Meta,
): ExitCode {
  if (options.json) console.out(toText(problemsDocument(problems, meta)));
  else console.fault(problemView(problems, { paint: console.paint }));
  return EXIT.badInput;
}

/**
 * Runs a command on a scenario: reads the files, and either says what is wrong with them or lets the command
 * work.
 *
 * @param name of the command
 * @param options as given
 * @param work what the command does; returns the exit code
 */
export async function withScenario(
  name: string,
  options: ScenarioOptions,
  work: (work: Work) => ExitCode | Promise<ExitCode>,
): Promise<ExitCode> {
  const console = openConsole(options);
  const plain: Meta = { version: VERSION, command: name };
  const input = readInput(options.scenario, options);
  if (!input.ok) return refuse(input.problems, options, console, plain);
  const { enclosure, catalog, text: written, doubts } = input;
  const meta = withDoubts(plain, doubts);
  if (name !== 'check' && !options.json) console.note(doubtNote(doubts));
  const answer: Work['answer'] = (document, text) => console.out(options.json ? toText(document()) : text());
  return work({ enclosure, catalog, text: written, doubts, console, meta, answer });
}
