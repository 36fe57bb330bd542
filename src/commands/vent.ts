import type { PerforatedSheet } from '../elements/perforated-sheet.ts';
import { describeBuild } from '../enclosure/describe.ts';
import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { withLostFans } from '../enclosure/lost-fans.ts';
import { cutDxf } from '../presentation/vent/cut-dxf.ts';
import { cutDrawing } from '../presentation/vent/cut-outlines.ts';
import { cutSvg } from '../presentation/vent/cut-svg.ts';
import { ventCsv, ventDocument } from '../presentation/vent/vent-data.ts';
import { ventView } from '../presentation/vent/vent-view.ts';
import { type VentAnswer, ventAnswer } from '../questions/vent/vent.ts';
import { curveSureness } from '../questions/vent/vent-sure.ts';
import { type VentWishes, ventTask } from '../questions/vent/vent-wishes.ts';
import type { Problem } from '../reading/problem.ts';
import { chosenBuild, dutyRefusal, refuseCall } from './chosen-build.ts';
import { refuse, type ScenarioOptions, type Work, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';
import { taken, writeWhole } from './written-file.ts';

/** Options of `vent`. */
export interface VentOptions extends ScenarioOptions, VentWishes {
  readonly build: string | undefined;
  readonly csv: boolean;
  /** Files to write the best pattern to. */
  readonly svg: string | undefined;
  readonly dxf: string | undefined;
  /** Whether files that are there may be replaced. */
  readonly force: boolean;
}

/** Files that were asked for but are there already. */
function takenFiles({ svg, dxf, force }: VentOptions): readonly Problem[] {
  return [svg, dxf].flatMap((file) => (file === undefined ? [] : (taken(file, force) ?? [])));
}

/** Writes the drawings that were asked for; what went wrong, if anything did. */
function writeDrawings(sheet: PerforatedSheet, { svg, dxf, force }: VentOptions): readonly Problem[] {
  const drawing = cutDrawing(sheet);
  const failed =
    (svg === undefined ? undefined : writeWhole(svg, cutSvg(drawing), force)) ??
    (dxf === undefined ? undefined : writeWhole(dxf, cutDxf(drawing), force));
  return failed ? [failed] : [];
}

function show(
  work: Work,
  options: VentOptions,
  answer: VentAnswer,
  enclosure: Enclosure,
  build: Build,
): void {
  const { console, meta } = work;
  if (options.csv) {
    console.out(ventCsv(answer, curveSureness(answer.task, answer.family, answer.curve.points)));
    return;
  }
  work.answer(
    () => ventDocument(answer, withInvented(meta, enclosure, [build])),
    () =>
      `${ventView(answer, {
        title: enclosure.title,
        arrangement: describeBuild(enclosure, build).arrangement,
        speed: options.speed,
        paint: console.paint,
        width: console.width,
      })}${inventedNote(enclosure, [build])}`,
  );
}

/** What was found about the opening of a build, or why nothing was. */
function answerFor(enclosure: Enclosure, build: Build, options: VentOptions): VentAnswer | string {
  const task = ventTask(enclosure, build, options);
  return typeof task === 'string' ? task : ventAnswer(task);
}

/** Writes the drawings, then shows the answer. */
function deliver(
  work: Work,
  options: VentOptions,
  answer: VentAnswer,
  enclosure: Enclosure,
  build: Build,
): ExitCode {
  const [best] = answer.candidates;
  const problems = best ? writeDrawings(best.sheet, options) : [];
  if (problems.length > 0) return refuse(problems, options, work.console, work.meta);
  show(work, options, answer, enclosure, build);
  for (const file of [options.svg, options.dxf]) {
    if (file !== undefined) work.console.note(`${file} is written.\n`);
  }
  return best?.reaches ? EXIT.answered : EXIT.noneAdequate;
}

/** Finds how large an opening must be and which holes to cut, and writes drawings of them. */
export function run(options: VentOptions): Promise<ExitCode> {
  return withScenario('vent', options, async (work) => {
    const problems = takenFiles(options);
    if (problems.length > 0) return refuse(problems, options, work.console, work.meta);
    const refusal = dutyRefusal(work, options.duty);
    if (refusal !== null) return refuseCall(work, options, refusal);
    const chosen = await chosenBuild(work, options.build);
    if ('refusal' in chosen) return refuseCall(work, options, chosen.refusal);
    const { build, lost = [] } = chosen;
    const enclosure = withLostFans(work.enclosure, build, lost);
    const answer = answerFor(enclosure, build, options);
    if (typeof answer === 'string') return refuseCall(work, options, answer);
    return deliver(work, options, answer, enclosure, build);
  });
}
