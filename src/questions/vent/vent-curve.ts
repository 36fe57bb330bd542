import { minimise } from '../../numerics/minimum.ts';
import { bracketedRoot } from '../../numerics/roots.ts';
import type { Fraction, SquareMetres } from '../../quantities/dimensions.ts';
import { holdsLimits } from './holds-limits.ts';
import { familyOpening, type HoleFamily } from './hole-family.ts';
import { type VentState, ventState } from './vent-state.ts';
import type { VentTask } from './vent-task.ts';

/** Points of the curve. */
const POINTS = 40;
/** The curve ends where it has come this near to what any area could give [-]. */
const END: Fraction = 0.99;
/** It ends at this many times what the field can hold at the latest [-]: beyond, it is another wall. */
const LATEST_END = 3;
/** Free areas that are looked at: these shares and multiples of the field's greatest [-]. */
const LEAST_SHARE = 1e-4;
const MOST_TIMES = 1e3;
/** Accuracy of an area, as a logarithm [-]. */
const AREA_TOLERANCE = 1e-7;
const HALVINGS = 30;
/** Accuracy of the knee as a share of the curve [-]. */
const KNEE_TOLERANCE = 1e-4;

/** A free area and what comes of it. */
export interface VentPoint extends VentState {
  readonly area: SquareMetres;
  /** Flow over that of an opening without any loss [-]. */
  readonly share: Fraction;
}

/** Flow, temperature and noise against free area. */
export interface VentCurve {
  readonly points: readonly VentPoint[];
  /** Where more area begins to gain little. */
  readonly knee?: VentPoint;
  /** Least free area that keeps the asked share of the flow [m²]; absent if none does. */
  readonly keepsFlow?: SquareMetres;
  /** Least free area with which the build can hold all limits, at whatever speeds [m²]; absent if none does. */
  readonly holdsLimits?: SquareMetres;
  /** Largest share of the flow that any area of such holes keeps [-]. */
  readonly most: Fraction;
}

function pointAt(task: VentTask, family: HoleFamily, area: SquareMetres, open: VentState) {
  const state = ventState(task, familyOpening(family, area));
  return state ? { ...state, area, share: state.flow / open.flow } : undefined;
}

/** Free area at which a share of the open flow is kept [m²]; undefined outside what is looked at. */
function areaFor(
  task: VentTask,
  family: HoleFamily,
  share: Fraction,
  open: VentState,
): SquareMetres | undefined {
  const miss = (logArea: number): number =>
    (pointAt(task, family, Math.exp(logArea), open)?.share ?? 0) - share;
  const [low, high] = [LEAST_SHARE, MOST_TIMES].map((times) => Math.log(times * family.fieldFull));
  const found = bracketedRoot(miss, low as number, high as number, { tolerance: AREA_TOLERANCE });
  return found.ok ? Math.exp(found.root) : undefined;
}

/** Least free area with which all limits can be held [m²]; more area never takes flow away from where it is. */
function areaForLimits(task: VentTask, family: HoleFamily): SquareMetres | undefined {
  const holds = (logArea: number): boolean => holdsLimits(task, familyOpening(family, Math.exp(logArea)));
  let [low, high] = [LEAST_SHARE, MOST_TIMES].map((times) => Math.log(times * family.fieldFull)) as [
    number,
    number,
  ];
  if (!holds(high)) return undefined;
  for (let count = 0; count < HALVINGS && high - low > AREA_TOLERANCE; count++) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return Math.exp(high);
}

/**
 * Where a curve that rises ever less turns from steep to flat: the point furthest above the line from nothing to its
 * end, both axes scaled to their ends.
 *
 * Source: Satopää et al., Finding a "kneedle" in a haystack (2011), without smoothing, from nothing on.
 *
 * @param shareAt flow share [-] at a free area [m²]
 * @param end of the curve [m²], > 0
 * @returns the area [m²]
 */
export function kneeOf(shareAt: (area: SquareMetres) => Fraction, end: SquareMetres): SquareMetres {
  const last = shareAt(end);
  const below = (area: SquareMetres): number => area / end - shareAt(area) / last;
  // A field that begins to grow may put a kink into the curve, so the best of many points comes first.
  const step = end / POINTS;
  const depths = Array.from({ length: POINTS }, (_, index) => below((index + 1) * step));
  const at = (depths.indexOf(Math.min(...depths)) + 1) * step;
  const least = Math.max(KNEE_TOLERANCE * end, at - step);
  const found = minimise(below, least, Math.min(end, at + step), KNEE_TOLERANCE * end);
  return found.ok ? found.at : found.best;
}

/**
 * Flow, temperature and noise against free area of one family of holes, the fans at the speeds of the task, and the
 * areas that do what is asked.
 *
 * @param task the opening
 * @param family of holes
 * @param open what comes of no opening at all in the way
 */
export function ventCurve(task: VentTask, family: HoleFamily, open: VentState): VentCurve {
  const most = pointAt(task, family, MOST_TIMES * family.fieldFull, open)?.share ?? 0;
  const latest = LATEST_END * family.fieldFull;
  const end = Math.min(latest, areaFor(task, family, END * most, open) ?? latest);
  const points = Array.from({ length: POINTS }, (_, index) =>
    pointAt(task, family, (end * (index + 1)) / POINTS, open),
  ).filter((point) => point !== undefined);
  const kneeArea = kneeOf((area) => pointAt(task, family, area, open)?.share ?? 0, end);
  const knee = pointAt(task, family, kneeArea, open);
  const keepsFlow = areaFor(task, family, task.keep, open);
  const limits = areaForLimits(task, family);
  return {
    points,
    most,
    ...(knee ? { knee } : {}),
    ...(keepsFlow === undefined ? {} : { keepsFlow }),
    ...(limits === undefined ? {} : { holdsLimits: limits }),
  };
}
