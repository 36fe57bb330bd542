import type { Band } from '../../bands/band.ts';
import type { Duty } from '../../enclosure/enclosure.ts';
import type { Fraction } from '../../quantities/dimensions.ts';
import { bandsAt } from '../bands-at.ts';
import type { SetBuild } from './rescue.ts';

/** How sure what becomes of a build under some conditions is. */
export interface CellSureness {
  /** Probability that every limit holds, without the asked margin [-]. */
  readonly holding: Fraction;
  /** Margin of the limit that is tightest as stated, beyond what is asked [K]. */
  readonly margin: Band;
}

/**
 * How sure the margin is at the speeds that are set; null without a solution, and where nothing has a limit.
 *
 * @param set the build under some conditions
 */
export function cellSureness({ machine, duty, ratios, room, slower }: SetBuild): CellSureness | null {
  const { duties, margin: asked } = machine.plant.enclosure;
  const speeds = ratios.map((ratio) => ratio * (1 - slower));
  const bands = bandsAt(machine, { ...(duties[duty] as Duty), room }, speeds, { noise: false });
  const [first, ...others] = bands?.margins ?? [];
  if (!bands || !first) return null;
  const tightest = others.reduce(
    (least, { margin }) => (margin.expected < least.expected ? margin : least),
    first.margin,
  );
  const { low, expected, high } = tightest;
  return {
    holding: bands.holding,
    margin: { low: low - asked, expected: expected - asked, high: high - asked },
  };
}
