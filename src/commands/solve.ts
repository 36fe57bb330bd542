import type { BuildBands } from '../bands/build-bands.ts';
import { outcomeBands } from '../bands/outcome-bands.ts';
import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { withLostFans } from '../enclosure/lost-fans.ts';
import { assemble, plantOf } from '../enclosure/machine.ts';
import type { BuildOutcome } from '../enclosure/outcome.ts';
import { solveDocument } from '../presentation/json.ts';
import { nextCsv } from '../presentation/next/next-csv.ts';
import { solveView } from '../presentation/solve-view.ts';
import { type Advice, adviceOn } from '../questions/advice.ts';
import { buildOutcome, isFailed, outcomeAt } from '../search/build-outcome.ts';
import { fasterIsCooler } from '../search/monotone-airway.ts';
import { solveBuild } from '../search/solve-build.ts';
import { dutyRefusal, namedBuild, rankedBuild, refuseCall } from './chosen-build.ts';
import { type ScenarioOptions, type Work, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';
import { saveBuild } from './save-build.ts';

/** Options of `solve`. */
export interface SolveOptions extends ScenarioOptions {
  /** Name of a build of the scenario. */
  readonly build: string | undefined;
  /** Place in the ranking, from 1; used if no build is named. */
  readonly rank: number;
  /** One speed for all banks [%]; the quietest adequate speeds if absent. */
  readonly speed: number | undefined;
  /** Duty to show in full; all if absent. */
  readonly duty: string | undefined;
  /** Whether what to change next is written as comma-separated values, and nothing else. */
  readonly csv: boolean;
  /** Name under which the build is put into the file of the scenario; it is not if absent. */
  readonly saveBuild: string | undefined;
}

function outcomeFor(enclosure: Enclosure, build: Build, speed: number | undefined) {
  const plant = plantOf(enclosure);
  const machine = assemble(plant, build);
  const solved = solveBuild(machine, fasterIsCooler(plant));
  if (speed === undefined) return buildOutcome(solved);
  const ratios = Float64Array.from(machine.banks, () => speed / 100);
  return outcomeAt(
    machine,
    enclosure.duties.map(() => ratios),
    solved.reserve,
  );
}

function show(
  work: Work,
  options: SolveOptions,
  outcome: BuildOutcome,
  advice: Advice | undefined,
  bands: BuildBands | null,
): void {
  const { enclosure, console, meta, answer } = work;
  if (options.csv) {
    console.out(nextCsv(advice?.next));
    return;
  }
  const builds = [outcome.build.options];
  answer(
    () => solveDocument(outcome, withInvented(meta, enclosure, builds), advice?.next, advice?.wouldDo, bands),
    () =>
      `${solveView(outcome, {
        title: enclosure.title,
        duty: options.duty,
        margin: enclosure.margin,
        bands,
        next: advice?.next,
        wouldDo: advice?.wouldDo,
        paint: console.paint,
        ...(console.width === undefined ? {} : { width: console.width }),
      })}${inventedNote(enclosure, builds)}`,
  );
}

/** Puts the build into the file, if that is wished. */
function keep(work: Work, { scenario, saveBuild: name }: SolveOptions, build: Build): ExitCode {
  if (name === undefined) return EXIT.answered;
  const failed = saveBuild(work, scenario, build, name);
  if (failed === undefined) work.console.note(`hushwright: ${scenario} has the build "${name}" now\n`);
  else work.console.fault(`hushwright: ${failed}\n`);
  return failed === undefined ? EXIT.answered : EXIT.badInput;
}

/** Shows one build in full: speeds, flows, pressures, temperatures and levels as budgets. */
export function run(options: SolveOptions): Promise<ExitCode> {
  return withScenario('solve', options, async (work) => {
    const { enclosure } = work;
    const refusal = dutyRefusal(work, options.duty);
    const chosen =
      refusal !== null
        ? { refusal }
        : options.build === undefined
          ? await rankedBuild(work, options.rank)
          : namedBuild(enclosure, options.build);
    if ('refusal' in chosen) {
      return refuseCall(work, options, chosen.refusal);
    }
    const { build, lost = [] } = chosen;
    const there = withLostFans(enclosure, build, lost);
    const outcome = outcomeFor(there, build, options.speed);
    if (isFailed(outcome)) {
      work.console.fault(`hushwright: no solution in duty "${outcome.duty}": ${outcome.reason}\n`);
      return EXIT.noneAdequate;
    }
    // At a speed somebody sets there is nothing to compare the quietest speeds of a change with.
    const advice =
      options.speed === undefined
        ? adviceOn({ enclosure: there, build, outcome, fans: work.catalog.fans })
        : undefined;
    show(work, options, outcome, advice, options.csv ? null : outcomeBands(there, outcome));
    return outcome.adequate ? keep(work, options, build) : EXIT.noneAdequate;
  });
}
