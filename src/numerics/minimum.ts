/** A minimum, or why none was found and the best argument seen. */
export type Minimum =
  | { readonly ok: true; readonly at: number; readonly value: number; readonly calls: number }
  | { readonly ok: false; readonly reason: 'not-finite' | 'too-many-calls'; readonly best: number };

interface Sample {
  readonly x: number;
  readonly f: number;
}

/** The interval that holds the minimum and the three best arguments so far. */
interface Search {
  low: number;
  high: number;
  best: Sample;
  second: Sample;
  third: Sample;
}

const GOLDEN_SHARE = (3 - Math.sqrt(5)) / 2;
const MOST_CALLS = 200;

/** Step from the best argument to the lowest point of the parabola through the three best; NaN if they have none. */
function parabolaStep({ best, second, third }: Search): number {
  const toSecond = (best.x - second.x) * (best.f - third.f);
  const toThird = (best.x - third.x) * (best.f - second.f);
  const moment = (best.x - third.x) * toThird - (best.x - second.x) * toSecond;
  return moment / (2 * (toSecond - toThird));
}

function narrow(search: Search, tried: Sample): void {
  const { best, second, third } = search;
  const better = tried.f <= best.f;
  const outer = better ? best.x : tried.x;
  const inner = better ? tried.x : best.x;
  if (inner < outer) search.high = outer;
  else search.low = outer;
  if (better) {
    search.third = second;
    search.second = best;
    search.best = tried;
  } else if (tried.f <= second.f || second.x === best.x) {
    search.third = second;
    search.second = tried;
  } else if (tried.f <= third.f || third.x === best.x || third.x === second.x) {
    search.third = tried;
  }
}

/** Next step, and whether it is a golden cut; a parabola's step must halve the step before last. */
function nextStep(search: Search, beforeLast: number, margin: number): { step: number; golden: boolean } {
  const { low, high, best } = search;
  const step = parabolaStep(search);
  const x = best.x + step;
  if (Math.abs(step) < Math.abs(beforeLast) / 2 && x > low && x < high) {
    const nearEnd = x - low < 2 * margin || high - x < 2 * margin;
    return { step: nearEnd ? Math.sign((low + high) / 2 - best.x) * margin : step, golden: false };
  }
  const side = best.x < (low + high) / 2 ? high : low;
  return { step: GOLDEN_SHARE * (side - best.x), golden: true };
}

function searchInside(f: (x: number) => number, low: number, high: number, tolerance: number): Minimum {
  const x = low + GOLDEN_SHARE * (high - low);
  const first = { x, f: f(x) };
  if (!Number.isFinite(first.f)) return { ok: false, reason: 'not-finite', best: x };
  const search: Search = { low, high, best: first, second: first, third: first };
  let last = 0;
  let beforeLast = 0;
  for (let calls = 1; calls < MOST_CALLS; calls += 1) {
    const { best } = search;
    const margin = Math.sqrt(Number.EPSILON) * Math.abs(best.x) + tolerance / 3;
    const middle = (search.low + search.high) / 2;
    if (Math.abs(best.x - middle) <= 2 * margin - (search.high - search.low) / 2) {
      return { ok: true, at: best.x, value: best.f, calls };
    }
    const next = nextStep(search, beforeLast, margin);
    beforeLast = next.golden ? (best.x < middle ? search.high : search.low) - best.x : last;
    last = next.step;
    const length = Math.max(Math.abs(next.step), margin);
    const at = best.x + (next.step < 0 ? -length : length);
    const tried = { x: at, f: f(at) };
    if (!Number.isFinite(tried.f)) return { ok: false, reason: 'not-finite', best: best.x };
    narrow(search, tried);
  }
  return { ok: false, reason: 'too-many-calls', best: search.best.x };
}

/**
 * Minimum of a continuous function between two arguments, the ends included. With several minima between the ends
 * it finds one of them.
 *
 * @param f function of one argument
 * @param low lower end [any unit]
 * @param high upper end, ≥ low [same unit]
 * @param tolerance greatest distance from the minimum, > 0 [same unit]; about 1.5e-8 of the argument is added
 * @returns the minimum, or a reason: a value that is not finite, too many calls
 *
 * Source: Brent, Algorithms for Minimization without Derivatives (1973), chapter 5 (from memory).
 */
export function minimise(f: (x: number) => number, low: number, high: number, tolerance: number): Minimum {
  const inside = searchInside(f, low, high, tolerance);
  if (!inside.ok) return inside;
  const calls = inside.calls + 2;
  let best: Sample = { x: inside.at, f: inside.value };
  for (const end of [low, high]) {
    const value = f(end);
    if (!Number.isFinite(value)) return { ok: false, reason: 'not-finite', best: best.x };
    if (value < best.f) best = { x: end, f: value };
  }
  return { ok: true, at: best.x, value: best.f, calls };
}
