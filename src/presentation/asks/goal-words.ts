import type { Decibels } from '../../quantities/dimensions.ts';
import type { RankedBy } from '../../search/ranking.ts';
import { quantity } from '../figures.ts';
import { printable } from '../printable.ts';

const MEAN: RankedBy = { goal: 'mean' };

/** The level up to which builds are looked at, in words. */
function upTo(cap: Decibels | undefined): string {
  return cap === undefined ? '' : ` up to ${quantity('level', cap)}`;
}

const titles: Readonly<Record<RankedBy['goal'], string>> = {
  mean: 'quietest adequate builds',
  loudest: 'quietest adequate builds',
  price: 'cheapest adequate builds',
  depth: 'adequate builds of least depth',
  power: 'adequate builds of least fan power',
};

/** What a list holds, in words. */
export function goalTitle({ goal, duty, cap }: RankedBy = MEAN): string {
  const where = duty === undefined ? '' : ` in ${printable(duty)}`;
  return `${titles[goal]}${where}${upTo(cap)}`;
}

const lesses: Readonly<Record<RankedBy['goal'], string>> = {
  mean: 'is quieter',
  loudest: 'is quieter',
  price: 'is cheaper',
  depth: 'has less depth',
  power: 'takes less fan power',
};

/** What a build that is left out is not, in words. */
export function lessThanListed({ goal }: RankedBy = MEAN): string {
  return lesses[goal];
}
