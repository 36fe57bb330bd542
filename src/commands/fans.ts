import { type Meta, toText } from '../presentation/document.ts';
import { doubtNote, withDoubts } from '../presentation/doubts.ts';
import { fanListDocument, fanListView } from '../presentation/fans/fan-list-view.ts';
import { importDocument, importView } from '../presentation/fans/import-view.ts';
import { stockDocument, stockView } from '../presentation/fans/stock-view.ts';
import { type FanWish, fanList } from '../questions/fans/fan-list.ts';
import type { TextFile } from '../reading/catalog-file.ts';
import type { Problem } from '../reading/problem.ts';
import { type ImportedFans, importFans } from '../reading/shop/import-fans.ts';
import { SOUND_ASSUMPTIONS } from '../sound/sound-assumptions.ts';
import { refuse } from './command.ts';
import { type CommonOptions, type Console, EXIT, type ExitCode, openConsole } from './console.ts';
import { type CatalogChoice, readCatalogInput } from './input.ts';
import { INVENTED_MESSAGE } from './invented.ts';
import { readText } from './text-file.ts';
import { VERSION } from './version.ts';
import { writeWhole } from './written-file.ts';

/** Options of `fans`. */
export interface FansOptions extends CommonOptions, CatalogChoice {
  /** Which fans are listed. */
  readonly wish: FanWish;
  /** Whether stock is listed instead of fans. */
  readonly stock: boolean;
  /** Lists of a shop to make a catalog from. */
  readonly from: readonly string[];
  /** Digitised curves that belong to them. */
  readonly curves: readonly string[];
  /** Where the catalog is written; standard output if absent. */
  readonly to: string | undefined;
  readonly family: string;
  /** Whether a file that is there may be replaced. */
  readonly force: boolean;
}

/** Texts of all files, or what is wrong with some. */
function textsOf(files: readonly string[]): {
  readonly texts: readonly TextFile[];
  readonly problems: readonly Problem[];
} {
  const read = files.map(readText);
  return {
    texts: read.flatMap((entry) => (entry.ok ? entry.files : [])),
    problems: read.flatMap((entry) => (entry.ok ? [] : [entry.problem])),
  };
}

function list(options: FansOptions, console: Console, meta: Meta): ExitCode {
  const input = readCatalogInput(options);
  if (!input.ok) return refuse(input.problems, options, console, meta);
  if (options.stock) {
    const { stock } = input.catalog;
    console.out(options.json ? toText(stockDocument(stock, meta)) : stockView(stock, console));
    return EXIT.answered;
  }
  const { path } = options.wish;
  const listing = { ...fanList(input.catalog.fans, options.wish, SOUND_ASSUMPTIONS), path };
  if (options.json) console.out(toText(fanListDocument(listing, withDoubts(meta, input.doubts))));
  else {
    console.note(doubtNote(input.doubts));
    const invented = listing.rows.some(({ fan }) => fan.provenance === 'invented');
    console.out(fanListView(listing, console) + (invented ? `${INVENTED_MESSAGE}\n` : ''));
  }
  return listing.rows.length > 0 ? EXIT.answered : EXIT.noneAdequate;
}

/** Tells what came of an import; a catalog without a file to go to is the answer itself. */
function report(made: ImportedFans, options: FansOptions, console: Console, meta: Meta): void {
  const { to } = options;
  if (options.json) console.out(toText(importDocument(made, to, withDoubts(meta, made.doubts))));
  else {
    if (to === undefined && made.text !== undefined) console.out(made.text);
    console.fault(importView(made, to, console.paint));
  }
}

function take(options: FansOptions, console: Console, meta: Meta): ExitCode {
  const lists = textsOf(options.from);
  const curves = textsOf(options.curves);
  const unread = [...lists.problems, ...curves.problems];
  if (unread.length > 0) return refuse(unread, options, console, meta);
  const made = importFans({ family: options.family, lists: lists.texts, curves: curves.texts });
  const failed =
    made.text === undefined || options.to === undefined
      ? undefined
      : writeWhole(options.to, made.text, options.force);
  if (failed) return refuse([failed], options, console, meta);
  report(made, options, console, meta);
  return made.problems.length > 0 ? EXIT.badInput : EXIT.answered;
}

/** Lists the fans of the catalogs, or makes a catalog from a shop's lists. */
export async function run(options: FansOptions): Promise<ExitCode> {
  const console = openConsole(options);
  const meta: Meta = { version: VERSION, command: 'fans' };
  return options.from.length > 0 ? take(options, console, meta) : list(options, console, meta);
}
