import { checkView } from '../presentation/check-view.ts';
import { toText } from '../presentation/document.ts';
import { doubtView, withDoubts } from '../presentation/doubts.ts';
import { catalogCheckDocument, catalogCheckView } from '../presentation/fans/catalog-check-view.ts';
import { checkDocument } from '../presentation/json.ts';
import { isCatalog, readCatalogs, type TextFile } from '../reading/catalog-file.ts';
import { spaceSize } from '../search/space.ts';
import { refuse, type ScenarioOptions, withScenario } from './command.ts';
import { EXIT, type ExitCode, openConsole, STANDARD_INPUT } from './console.ts';
import { readCatalogInput } from './input.ts';
import { readText } from './text-file.ts';
import { VERSION } from './version.ts';

/** The file that is to be checked, if it is a catalog; of standard input a scenario is expected. */
function catalogIn(file: string): TextFile | undefined {
  if (file === STANDARD_INPUT) return undefined;
  const read = readText(file);
  return read.ok ? read.files.find(({ text }) => isCatalog(text)) : undefined;
}

/** Checks a catalog beside the others. */
function checkCatalog(own: TextFile, options: ScenarioOptions): ExitCode {
  const console = openConsole(options);
  const meta = { version: VERSION, command: 'check' };
  const input = readCatalogInput({ ...options, catalog: [...options.catalog, own.file] });
  const alone = readCatalogs([own]);
  if (!input.ok || !alone.ok) return refuse(input.ok ? [] : input.problems, options, console, meta);
  const holds = { fans: alone.fans.length, stock: alone.stock.length };
  if (options.json) console.out(toText(catalogCheckDocument(holds, withDoubts(meta, input.doubts))));
  else console.out(catalogCheckView(holds, input.doubts, { file: own.file, paint: console.paint }));
  return EXIT.answered;
}

/** Checks the files of a scenario, or a catalog, and says what it holds. */
export async function run(options: ScenarioOptions): Promise<ExitCode> {
  const own = catalogIn(options.scenario);
  if (own) return checkCatalog(own, options);
  return withScenario('check', options, ({ enclosure, doubts, console, meta, answer }) => {
    const space = spaceSize(enclosure);
    answer(
      () => checkDocument(enclosure, space, meta),
      () =>
        doubtView(doubts, console.paint) +
        (doubts.length > 0 ? '\n' : '') +
        checkView(enclosure, space, { file: options.scenario, paint: console.paint }),
    );
    return EXIT.answered;
  });
}
