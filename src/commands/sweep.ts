import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { sweepCsv, sweepDocument } from '../presentation/questions/sweep-data.ts';
import { type Shown, sweepView } from '../presentation/questions/sweep-view.ts';
import { readRange, type Spacing } from '../quantities/value-range.ts';
import { findQuantity } from '../questions/quantity.ts';
import { type Axis, type Sweep, sweep } from '../questions/sweep.ts';
import { writtenTree } from '../reading/variants/scenario-source.ts';
import { chosenBuild, dutyRefusal, refuseCall } from './chosen-build.ts';
import { type ScenarioOptions, sourceOf, type Work, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';

/** Options of `sweep`. */
export interface SweepCommandOptions extends ScenarioOptions {
  /** One or two quantities, each with its values: `elements.front.hole = 3 mm to 8 mm`. */
  readonly vary: readonly string[];
  readonly build: string | undefined;
  readonly anew: boolean;
  /** One speed for all banks [%]. */
  readonly speed: number | undefined;
  /** Values that a range is divided into [-]. */
  readonly points: number;
  readonly log: boolean;
  /** The only duty that counts. */
  readonly duty: string | undefined;
  readonly show: Shown | undefined;
  readonly csv: boolean;
}

interface AxisContext {
  readonly written: unknown;
  readonly enclosure: Enclosure;
  readonly points: number;
  readonly spacing: Spacing;
}

/** `quantity = values` as an axis, or what is wrong with it. */
function axisOf(text: string, { points, spacing, ...context }: AxisContext): Axis | string {
  const [, name = '', values = ''] = /^([^=]+)=(.+)$/.exec(text) ?? [];
  if (name.trim() === '')
    return `--vary takes a quantity and its values, such as "room = 20 °C to 40 °C", not "${text}"`;
  const quantity = findQuantity(name, context);
  if (typeof quantity === 'string') return quantity;
  const range = readRange(values, points, spacing);
  return typeof range === 'string' ? `${quantity.name}: ${range}` : { quantity, range };
}

/** The quantities and values that are asked for, or what is wrong with the first that cannot be. */
function axesOf(work: Work, options: SweepCommandOptions): readonly Axis[] | string {
  const context: AxisContext = {
    written: writtenTree(sourceOf(work, options)),
    enclosure: work.enclosure,
    points: options.points,
    spacing: options.log ? 'log' : 'linear',
  };
  const axes = options.vary.map((text) => axisOf(text, context));
  const wrong = axes.find((each) => typeof each === 'string');
  return wrong ?? axes.filter((each) => typeof each !== 'string');
}

/** Why no point of a sweep can be worked out; undefined if one can. */
function reasonOf({ points }: Sweep): string | undefined {
  const reasons = points.flatMap(({ state }) => (typeof state === 'string' ? [state] : []));
  return reasons.length === points.length ? reasons[0] : undefined;
}

function show(work: Work, options: SweepCommandOptions, swept: Sweep, build: Build): void {
  const { enclosure, console, meta } = work;
  if (options.csv) {
    console.out(sweepCsv(swept));
    return;
  }
  const fixed = options.speed !== undefined || swept.axes.some(({ quantity }) => quantity.speeds);
  const shown = options.show ?? (fixed ? 'margin' : 'level');
  const view = { title: enclosure.title, shown, paint: console.paint, width: console.width };
  work.answer(
    () => sweepDocument(enclosure.title, swept, withInvented(meta, enclosure, [build])),
    () => `${sweepView(swept, view)}${inventedNote(enclosure, [build])}`,
  );
}

/** Varies one quantity of a scenario, or two. */
export function run(options: SweepCommandOptions): Promise<ExitCode> {
  return withScenario('sweep', options, async (work) => {
    const axes = axesOf(work, options);
    const refusal = typeof axes === 'string' ? axes : dutyRefusal(work, options.duty);
    if (typeof axes === 'string' || refusal !== null) return refuseCall(work, options, String(refusal));
    const chosen = await chosenBuild(work, options.build);
    if ('refusal' in chosen) return refuseCall(work, options, chosen.refusal);
    const { build, lost } = chosen;
    const base = { source: sourceOf(work, options), enclosure: work.enclosure, build, lost };
    const speed = options.speed === undefined ? undefined : options.speed / 100;
    // A matrix in words has no room for bands.
    const bands = axes.length < 2 || options.csv || options.json;
    const swept = sweep(base, axes, { speed, anew: options.anew, duty: options.duty, bands });
    const reason = reasonOf(swept);
    if (reason !== undefined) return refuseCall(work, options, `no value can be used: ${reason}`);
    show(work, options, swept, build);
    const adequate = swept.points.some(({ state }) => typeof state !== 'string' && state.adequate);
    return adequate ? EXIT.answered : EXIT.noneAdequate;
  });
}
