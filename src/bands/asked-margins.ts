import type { Fraction } from '../quantities/dimensions.ts';
import { joined } from './band.ts';
import { HALF_WIDTH } from './doubt.ts';
import { type Draws, type Margins, probabilityOfHolding } from './holding.ts';

/** So much more than asked is aimed for [-]. */
const AIM: Fraction = 0.0005;
/** A margin above what is asked by less is what the limit allows [K]. */
const ON_LIMIT = 1e-2;
/** Deviations in hand that are enough for any probability asked for, and halvings to find those that are needed. */
const MOST_DEVIATIONS = 8;
const HALVINGS = 40;
/** Least margin asked of what may run away [K]. */
const FIRST_STEP = 1;

/** What speeds leave to each limit. */
export interface FoundMargins {
  readonly margins: Margins;
  readonly draws: Draws;
  /** Limits less the temperature of the room, order of the margins [K]. */
  readonly headrooms: readonly number[];
}

/** Standard deviation of each margin downwards [K]. */
function deviationsOf({ stated, effects }: Margins): Float64Array {
  return stated.map((_, limit) => {
    const moves = effects.map(
      ({ below, above }) => [below[limit] as number, above[limit] as number] as const,
    );
    return joined(moves).below / HALF_WIDTH;
  });
}

/**
 * Margins to ask for: of each limit the same number of its own standard deviations, the least number with which all
 * limits hold together as surely as asked. What has more in hand than asked so far keeps that. With more margin the
 * rise is less and the deviation as well, nearly in proportion.
 *
 * @param found margins at the speeds tried last
 * @param asked margins these were asked for [K]
 * @param least margin asked of every limit [K]
 * @param confidence probability asked for [-]
 */
export function nextAsked(
  { margins, draws, headrooms }: FoundMargins,
  asked: Float64Array,
  least: number,
  confidence: Fraction,
): Float64Array {
  const deviations = deviationsOf(margins);
  // So near running away that nothing can be said: away from there first.
  if (!deviations.every(Number.isFinite)) {
    return asked.map((value, limit) =>
      Number.isFinite(deviations[limit]) ? value : Math.max(FIRST_STEP, 2 * value),
    );
  }
  const expected = (count: number): Float64Array =>
    deviations.map((size, limit) => {
      const found = margins.stated[limit] as number;
      const spare = found > (asked[limit] as number) + ON_LIMIT ? found : least;
      return Math.max(spare, count * size);
    });
  let low = 0;
  let high = MOST_DEVIATIONS;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (probabilityOfHolding(draws, expected(middle)) < confidence + AIM) low = middle;
    else high = middle;
  }
  return deviations.map((size, limit) => {
    const headroom = headrooms[limit] as number;
    const rise = Math.max(0, headroom - (margins.stated[limit] as number));
    const wanted = high * size;
    return Math.max(least, wanted > 0 && headroom > 0 ? (wanted * headroom) / (rise + wanted) : wanted);
  });
}
