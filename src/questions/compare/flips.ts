import type { Duty } from '../../enclosure/enclosure.ts';
import { bracketedRoot } from '../../numerics/roots.ts';
import type { Decibels } from '../../quantities/dimensions.ts';
import type { OperatingState } from '../operating-state.ts';
import { atLevel, evenRunner } from './even-speed.ts';
import { pathNumber } from './path-number.ts';
import { withResistance } from './resistance.ts';
import type { Variant } from './variants.ts';

/** What decides: the least margin, or the flow where no limit tells the variants apart. */
export type Measure = 'margin' | 'flow';

/** A resistance of the box at which another variant becomes the best at equal level. */
export interface Flip {
  /** Factor on all losses of the box [-]. */
  readonly factor: number;
  /** k of the first variant that has one, there [-]; absent if none has. */
  readonly k?: number;
  /** Index of the variant that is best beyond. */
  readonly then: number;
  /** Whether that is with more resistance. */
  readonly harder: boolean;
}

/** What stays the same. */
export interface FlipContext {
  readonly measure: Measure;
  /** [dB]; the quietest full speed at each resistance if absent. */
  readonly level: Decibels | undefined;
  readonly place: number;
}

/** Farthest factor on the losses that is looked at, one way and the other [-]: beyond it, it is another box. */
export const FARTHEST = 16;
/** Steps on the way there. */
const STEPS = 8;
const STEP = Math.log(FARTHEST) / STEPS;
const ACCURACY = 1e-4;

function worth(state: OperatingState | null, measure: Measure): number {
  if (!state) return Number.NEGATIVE_INFINITY;
  const value = measure === 'margin' ? state.tightest?.margin : state.massFlow;
  return value ?? Number.NEGATIVE_INFINITY;
}

/** Worth of each variant at equal level in a box that resists so many times as much. */
function worths(
  variants: readonly Variant[],
  duty: Duty,
  context: FlipContext,
  shift: number,
): readonly number[] {
  const factor = Math.exp(shift);
  const runners = variants.map((variant) =>
    evenRunner({ ...variant, enclosure: withResistance(variant.enclosure, factor) }, duty),
  );
  const level =
    context.level ?? Math.min(...runners.map((runner) => runner.at(1).level).filter(Number.isFinite));
  return runners.map((runner) => worth(atLevel(runner, level), context.measure));
}

function bestOf(values: readonly number[]): number {
  const most = Math.max(...values);
  return Number.isFinite(most) ? values.indexOf(most) : -1;
}

/** k of the first variant that has fans in the place. */
function firstNumber(
  variants: readonly Variant[],
  duty: Duty,
  place: number,
  factor: number,
): number | undefined {
  for (const variant of variants) {
    const scaled = { ...variant, enclosure: withResistance(variant.enclosure, factor) };
    const k = pathNumber(evenRunner(scaled, duty).machine, duty, place);
    if (k !== undefined) return k;
  }
  return undefined;
}

/**
 * Which variant is best at equal level, and the nearest resistances on both sides at which another one is.
 *
 * @param variants at least one
 * @param duty the state of use
 * @param context what decides, at which level
 */
export function flipsOf(
  variants: readonly Variant[],
  duty: Duty,
  context: FlipContext,
): { readonly best: number; readonly flips: readonly Flip[] } {
  const at = (shift: number): readonly number[] => worths(variants, duty, context, shift);
  const best = bestOf(at(0));
  if (best < 0 || variants.length < 2) return { best, flips: [] };
  const flips = [-1, 1].flatMap((sign): readonly Flip[] => {
    for (let step = 1; step <= STEPS; step++) {
      const then = bestOf(at(sign * step * STEP));
      if (then === best || then < 0) continue;
      const lead = (shift: number): number => {
        const values = at(shift);
        return (values[best] as number) - (values[then] as number);
      };
      const found = bracketedRoot(lead, sign * (step - 1) * STEP, sign * step * STEP, {
        tolerance: ACCURACY,
      });
      const factor = Math.exp(found.ok ? found.root : found.best);
      const k = firstNumber(variants, duty, context.place, factor);
      return [{ factor, ...(k === undefined ? {} : { k }), then, harder: sign > 0 }];
    }
    return [];
  });
  return { best, flips };
}
