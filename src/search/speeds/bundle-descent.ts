import { HOPELESS } from '../../heat/part-temperature.ts';
import { isAdequate, type Point, type Trial } from '../trial.ts';
import { type Bundle, bundleStep, type Correction, type Step } from './bundle-step.ts';
import { forecastAt, roomAround, stepped, type Tangent, tangentAt } from './tangent.ts';

/** Greatest and least length of a step in each log speed [-]. */
const MOST_TRUST = 0.4;
const LEAST_TRUST = 1e-3;
const MOST_STEPS = 40;
/** Tangents this many times the trust away are forgotten [-]. */
const NEAR = 3;
/** Those that foretell more than this beyond what is there are, too: of the logarithm of the energy, and of excess [K]. */
const WRONG = { energy: 1e-5, excess: 1e-4 } as const;
const SHRINK = 0.4;
const GROW = 2;
/** Share of what was promised that a step must bring to count, and to be followed by a longer one [-]. */
const KEPT = 0.1;
const KEPT_WELL = 0.5;
/** Steps that break a limit are corrected so often. */
const MOST_CORRECTIONS = 3;

/** What a descent needs of the search it serves. */
export interface Descender {
  readonly trial: Trial;
  /** Is told of every point met. */
  readonly look: (point: Point) => Point;
  /** Least relative gain of energy that counts [-]. */
  readonly progress: number;
}

/** Where a descent ended. */
export interface Descent {
  readonly end: Point;
  /** Whether steps went wrong: limits that cannot be seen from here, or jumps, may be close by. */
  readonly isRough: boolean;
}

interface Tried {
  readonly there: Point;
  /** Fall of the logarithm of the energy that was promised first. */
  readonly promised: number;
}

/** Takes a step and corrects it until all limits hold; null if no step promises progress. */
function tryStep({ trial, look, progress }: Descender, here: Point, bundle: Bundle): Tried | null {
  const first = bundleStep(bundle);
  if (!first || first.promised < progress) return null;
  let there = look(stepped(trial, here, first.step));
  const corrections: Correction[] = [];
  let last: Step = first;
  while (!isAdequate(there) && there.worst < HOPELESS && corrections.length < MOST_CORRECTIONS) {
    corrections.push({ step: last.step, excess: there.excess });
    const again = bundleStep({ ...bundle, corrections });
    if (!again || again.promised < progress) break;
    last = again;
    there = look(stepped(trial, here, again.step));
  }
  return { there, promised: first.promised };
}

/** Whether a tangent is close enough to here and true enough of what is here. */
function serves(other: Tangent, here: Tangent, trust: number): boolean {
  const isNear = other.place.every(
    (value, bank) => Math.abs(value - (here.place[bank] as number)) <= NEAR * trust,
  );
  if (!isNear) return false;
  const { energy, excess } = forecastAt(other, here.place);
  return (
    energy <= here.energy + WRONG.energy &&
    excess.every((value, limit) => value <= (here.excess[limit] as number) + WRONG.excess)
  );
}

/** Where a descent is. */
interface Progress {
  here: Point;
  /** Tangent there, or null where nothing can be told. */
  tangent: Tangent | null;
  others: readonly Tangent[];
  trust: number;
  isRough: boolean;
}

/** Goes on from where a step led, or learns from it why not. */
function takeUp({ trial, progress }: Descender, at: Progress, { there, promised }: Tried): void {
  const gain = isAdequate(there) ? Math.log(at.here.energy / there.energy) : Number.NEGATIVE_INFINITY;
  const tangent = tangentAt(trial, there, 1);
  if (gain > KEPT * promised) {
    if (at.tangent) at.others = [...at.others, at.tangent];
    at.here = there;
    at.tangent = tangent;
    if (gain < progress) at.trust *= SHRINK;
    else if (gain > KEPT_WELL * promised) at.trust = Math.min(MOST_TRUST, GROW * at.trust);
  } else {
    if (tangent) at.others = [...at.others, tangent];
    at.trust *= SHRINK;
    at.isRough = true;
  }
  if (!tangent) at.isRough = true;
}

/** Where no step promises anything: looks to the other side for kinks, or closer. */
function lookCloser({ trial }: Descender, at: Progress, isFirst: boolean): void {
  const back = isFirst ? tangentAt(trial, at.here, -1) : null;
  if (back) at.others = [back];
  else at.trust *= SHRINK;
}

/**
 * Descends along the limits with the tangents of several points at once, so that kinks and edges, where limits meet, are
 * followed.
 *
 * @param descender the trial, and what to do with its points
 * @param start an adequate point
 * @param firstTrust length of the first step in each log speed [-]: a short one stays in its valley
 */
export function bundleDescent(descender: Descender, start: Point, firstTrust = MOST_TRUST): Descent {
  const { trial } = descender;
  const at: Progress = {
    here: start,
    tangent: tangentAt(trial, start, 1),
    others: [],
    trust: firstTrust,
    isRough: false,
  };
  for (let count = 0; count < MOST_STEPS && at.trust > LEAST_TRUST; count++) {
    const { here, tangent, others, trust } = at;
    if (!tangent) break;
    const bundle = { here: tangent, others, corrections: [], ...roomAround(trial, here, trust) };
    const tried = tryStep(descender, here, bundle);
    if (tried) takeUp(descender, at, tried);
    else lookCloser(descender, at, count === 0);
    const now = at.tangent;
    at.others = now ? at.others.filter((other) => serves(other, now, at.trust)) : [];
    if (!tried && at.others.length === 0) break;
  }
  return { end: at.here, isRough: at.isRough || !at.tangent };
}
