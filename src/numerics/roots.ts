/** How exactly, and with how much work, a root is looked for. */
export interface RootOptions {
  /** Greatest distance from the true root [unit of the argument]; rounding of the root is added to it. */
  readonly tolerance: number;
  /** Most calls of the function [-]; 100 if absent. */
  readonly maxCalls?: number;
}

/** A root, or why there is none and the best argument seen. */
export type Root =
  | { readonly ok: true; readonly root: number; readonly calls: number }
  | {
      readonly ok: false;
      readonly reason: 'no-sign-change' | 'not-finite' | 'too-many-calls';
      /** Argument with the least magnitude of the function among those tried. */
      readonly best: number;
    };

interface Sample {
  readonly x: number;
  readonly f: number;
}

const DEFAULT_CALLS = 100;

/** Share of the way from `newest` to `opposite` at which to try next; `previous` is the point before. */
function nextShare(newest: Sample, opposite: Sample, previous: Sample): number {
  const placed = (newest.x - opposite.x) / (previous.x - opposite.x);
  const valued = (newest.f - opposite.f) / (previous.f - opposite.f);
  // Inverse quadratic interpolation is safe only where it is monotone between the three points.
  if (!(valued ** 2 < placed && (1 - valued) ** 2 < 1 - placed)) return 0.5;
  return (
    (newest.f / (opposite.f - newest.f)) * (previous.f / (opposite.f - previous.f)) +
    (((previous.x - newest.x) / (opposite.x - newest.x)) *
      (newest.f / (previous.f - newest.f)) *
      opposite.f) /
      (previous.f - opposite.f)
  );
}

function magnitude(sample: Sample): number {
  return Number.isNaN(sample.f) ? Number.POSITIVE_INFINITY : Math.abs(sample.f);
}

function closer(a: Sample, b: Sample): Sample {
  return magnitude(a) < magnitude(b) ? a : b;
}

function shrinkBracket(f: (x: number) => number, first: Sample, second: Sample, options: RootOptions): Root {
  const most = options.maxCalls ?? DEFAULT_CALLS;
  let newest = first;
  let opposite = second;
  let share = 0.5;
  for (let calls = 2; ; calls += 1) {
    const best = closer(newest, opposite);
    const width = Math.abs(opposite.x - newest.x);
    const wanted = options.tolerance + 2 * Number.EPSILON * Math.abs(best.x);
    if (best.f === 0 || width <= wanted) return { ok: true, root: best.x, calls };
    if (calls >= most) return { ok: false, reason: 'too-many-calls', best: best.x };
    const margin = (0.5 * wanted) / width;
    const x = newest.x + Math.min(Math.max(share, margin), 1 - margin) * (opposite.x - newest.x);
    const tried = { x, f: f(x) };
    if (!Number.isFinite(tried.f)) return { ok: false, reason: 'not-finite', best: best.x };
    const same = Math.sign(tried.f) === Math.sign(newest.f);
    const previous = same ? newest : opposite;
    if (!same) opposite = newest;
    newest = tried;
    share = nextShare(newest, opposite, previous);
  }
}

/**
 * Root of a continuous function between two arguments at which its signs differ. Never leaves the interval.
 *
 * @param f function; called at most `maxCalls` times
 * @param low one end of the interval [any unit]
 * @param high other end [same unit]
 * @param options tolerance in the argument and greatest number of calls
 * @returns the root, or a reason: no sign change at the ends, a value that is not finite, too many calls
 *
 * Source: Chandrupatla, Advances in Engineering Software 28 (1997) 145 (from memory): inverse quadratic
 * interpolation where it is safe, halving elsewhere.
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  options: RootOptions,
): Root {
  const first = { x: low, f: f(low) };
  if (first.f === 0) return { ok: true, root: low, calls: 1 };
  const second = { x: high, f: f(high) };
  if (second.f === 0) return { ok: true, root: high, calls: 2 };
  const best = closer(first, second).x;
  if (!Number.isFinite(first.f) || !Number.isFinite(second.f))
    return { ok: false, reason: 'not-finite', best };
  if (Math.sign(first.f) === Math.sign(second.f)) return { ok: false, reason: 'no-sign-change', best };
  return shrinkBracket(f, first, second, options);
}
