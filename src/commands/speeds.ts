import { withLostFans } from '../enclosure/lost-fans.ts';
import { assemble, plantOf } from '../enclosure/machine.ts';
import { controllerCsv, dutySpeedsCsv, speedsDocument } from '../presentation/questions/speeds-data.ts';
import { speedsView } from '../presentation/questions/speeds-view.ts';
import { controllerTable } from '../questions/controller-table.ts';
import { fasterIsCooler } from '../search/monotone-airway.ts';
import { solveBuild } from '../search/solve-build.ts';
import { chosenBuild, refuseCall } from './chosen-build.ts';
import { type ScenarioOptions, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';

/** Options of `speeds`, in SI. */
export interface SpeedsCommandOptions extends ScenarioOptions {
  readonly build: string | undefined;
  /** Lines of the controller between those of two duties [-]. */
  readonly between: number;
  /** Least rise from one temperature of the table to the next [K]. */
  readonly step: number | undefined;
  /** By how much the sensor may be off [K]. */
  readonly slack: number | undefined;
  /** Which table `--csv` writes. */
  readonly table: 'controller' | 'duties';
  readonly csv: boolean;
}

/** Tells what to set a controller to. */
export function run(options: SpeedsCommandOptions): Promise<ExitCode> {
  return withScenario('speeds', options, async (work) => {
    const { enclosure, console, meta } = work;
    const chosen = await chosenBuild(work, options.build);
    if ('refusal' in chosen) return refuseCall(work, options, chosen.refusal);
    const { build, lost = [] } = chosen;
    const plant = plantOf(withLostFans(enclosure, build, lost));
    const solved = solveBuild(assemble(plant, build), fasterIsCooler(plant));
    const { between, step = 1, slack = 1 } = options;
    const found = controllerTable(solved, { between, step, slack });
    if (options.csv) console.out(options.table === 'duties' ? dutySpeedsCsv(found) : controllerCsv(found));
    else
      work.answer(
        () => speedsDocument(enclosure.title, found, withInvented(meta, enclosure, [build])),
        () =>
          `${speedsView(enclosure.title, found, { paint: console.paint, width: console.width })}${inventedNote(enclosure, [build])}`,
      );
    return found.duties.every(({ adequate }) => adequate) ? EXIT.answered : EXIT.noneAdequate;
  });
}
