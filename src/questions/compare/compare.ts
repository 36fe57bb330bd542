import type { Duty } from '../../enclosure/enclosure.ts';
import type { Decibels, KelvinDifference } from '../../quantities/dimensions.ts';
import type { OperatingState } from '../operating-state.ts';
import { atLevel, atMargin, type EvenRunner, evenRunner } from './even-speed.ts';
import { type Flip, flipsOf, type Measure } from './flips.ts';
import { pathNumber } from './path-number.ts';
import { type StackUp, stackUp } from './stack-up.ts';
import { responder, type Sureness, surenessOf } from './sureness.ts';
import type { Variant } from './variants.ts';

/** A way to compare. */
export type Way = 'full' | 'equalLevel' | 'equalMargin';

/** One variant in one duty, in three ways that are fair in three senses. */
export interface ComparedVariant {
  readonly name: string;
  readonly needs: string;
  readonly stack: StackUp;
  /** R·Q0²/p0 of the compared place [-]; absent if it is empty or unresisted. */
  readonly k?: number;
  readonly full: OperatingState;
  /** All variants equally loud; null if this one cannot be. */
  readonly equalLevel: OperatingState | null;
  /** All variants equally warm; null if there is no limit or this one cannot be as cool. */
  readonly equalMargin: OperatingState | null;
  /** How sure each of the three is; null without a solution. */
  readonly sure: Readonly<Record<Way, Sureness | null>>;
}

/** Variants held against each other. */
export interface Comparison {
  readonly duty: string;
  readonly variants: readonly ComparedVariant[];
  /** Level at which they are compared [dB]. */
  readonly level: Decibels;
  /** Margin at which they are compared [K]; absent if nothing has a limit. */
  readonly margin?: KelvinDifference;
  /** What decides which is best at equal level. */
  readonly measure: Measure;
  /** Index of the best at equal level; −1 if none can be that loud. */
  readonly best: number;
  /**
   * Index of the one that all are held against by their noise: the best, else the quietest at full speed; −1 if nothing
   * has a solution.
   */
  readonly against: number;
  /** Where a more or less resisting box would make another one best. */
  readonly flips: readonly Flip[];
}

/** What is compared. */
export interface CompareOptions {
  /** Name of the duty; the hardest if absent. */
  readonly duty?: string | undefined;
  /** Level to compare at [dB]; the quietest full speed if absent. */
  readonly level?: Decibels | undefined;
  /** Place whose way is told by k. */
  readonly place: number;
}

/** Margins nearer than this do not tell variants apart [K]: then flows do. */
const TOLD_APART: KelvinDifference = 0.01;

/** The duty in which the first variant has the least margin at full speed. */
function hardestDuty(variant: Variant): Duty {
  const { duties } = variant.enclosure;
  const margins = duties.map((duty) => {
    const { level, tightest } = evenRunner(variant, duty).at(1);
    // Without a solution nothing holds; without limits nothing can be missed.
    return Number.isNaN(level) ? Number.NEGATIVE_INFINITY : (tightest?.margin ?? Number.POSITIVE_INFINITY);
  });
  return duties[margins.indexOf(Math.min(...margins))] ?? (duties[0] as Duty);
}

function measureOf(states: readonly (OperatingState | null)[]): Measure {
  const margins = states.flatMap((state) => (state?.tightest ? [state.tightest.margin] : []));
  return margins.length > 1 && Math.max(...margins) - Math.min(...margins) > TOLD_APART ? 'margin' : 'flow';
}

/** The asked margin if all reach it at full speed, else what the weakest reaches. */
function commonMargin(
  full: readonly OperatingState[],
  asked: KelvinDifference,
): KelvinDifference | undefined {
  const margins = full.flatMap(({ tightest }) => (tightest ? [tightest.margin] : []));
  return margins.length === full.length && margins.length > 0 ? Math.min(asked, ...margins) : undefined;
}

function quietestOf(full: readonly OperatingState[]): number {
  const levels = full.map(({ level }) => (Number.isNaN(level) ? Number.POSITIVE_INFINITY : level));
  return levels.every((level) => level === Number.POSITIVE_INFINITY)
    ? -1
    : levels.indexOf(Math.min(...levels));
}

/** How sure the variants are, in each way: where all are equally loud none is quieter. */
function surenessByWay(
  variants: readonly Variant[],
  duty: Duty,
  ways: Readonly<Record<Way, readonly (OperatingState | null)[]>>,
  against: number,
): Readonly<Record<Way, readonly (Sureness | null)[]>> {
  const responders = variants.map((variant) => responder(variant, duty));
  const sure = (way: Way): readonly (Sureness | null)[] =>
    surenessOf(
      responders.map((respond, index) => respond(ways[way][index] ?? null)),
      way === 'equalLevel' ? undefined : against,
    );
  return { full: sure('full'), equalLevel: sure('equalLevel'), equalMargin: sure('equalMargin') };
}

/**
 * Holds variants against each other in one duty: at full speed, equally loud, equally warm, all fans of a variant at one
 * share of full speed. Tells which is best at equal level, at which resistance of the box another would be, and how sure
 * levels and their differences are.
 *
 * @param variants at least one
 * @param options duty, level and place
 */
export function compare(variants: readonly Variant[], options: CompareOptions): Comparison {
  const [first] = variants as readonly [Variant, ...Variant[]];
  const duty = first.enclosure.duties.find(({ id }) => id === options.duty) ?? hardestDuty(first);
  const runners = variants.map((variant) => evenRunner(variant, duty));
  const full = runners.map((runner) => runner.at(1));
  const level = options.level ?? Math.min(...full.map((state) => state.level).filter(Number.isFinite));
  const margin = commonMargin(full, first.enclosure.margin);
  const equal = runners.map((runner) => atLevel(runner, level));
  const measure = measureOf(equal);
  const { best, flips } = flipsOf(variants, duty, { measure, level: options.level, place: options.place });
  const even = margin === undefined ? runners.map(() => null) : runners.map((each) => atMargin(each, margin));
  const against = best >= 0 ? best : quietestOf(full);
  const ways = { full, equalLevel: equal, equalMargin: even };
  const sure = surenessByWay(variants, duty, ways, against);
  const compared = runners.map((runner: EvenRunner, index): ComparedVariant => {
    const k = pathNumber(runner.machine, duty, options.place);
    return {
      name: runner.variant.name,
      needs: runner.variant.needs,
      stack: stackUp(runner.variant),
      ...(k === undefined ? {} : { k }),
      full: full[index] as OperatingState,
      equalLevel: equal[index] ?? null,
      equalMargin: even[index] ?? null,
      sure: {
        full: sure.full[index] ?? null,
        equalLevel: sure.equalLevel[index] ?? null,
        equalMargin: sure.equalMargin[index] ?? null,
      },
    };
  });
  return {
    duty: duty.id,
    variants: compared,
    level,
    ...(margin === undefined ? {} : { margin }),
    measure,
    best,
    against,
    flips,
  };
}
