import type { BaseGenome } from 'genetic-search';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import type { Random } from '../search/random.ts';

/** Chance that a gene changes, and that it changes by a small step [-]. */
const CHANGE = 0.12;
const SMALL = 0.7;
const SPEED_STEP = 0.06;
const OPTION_STEP = 3;

/** Options by place, then speeds by duty and bank place, 0 for the hold floor and 1 for full speed. */
export interface Genome extends BaseGenome {
  readonly options: readonly number[];
  readonly speeds: readonly number[];
}

/** Any genome of an enclosure. */
export function drawn(random: Random, { places, duties }: Enclosure, id: number): Genome {
  const banks = places.filter(({ kind }) => kind === 'bank').length;
  return {
    id,
    options: places.map(({ options }) => random.whole(0, options.length - 1)),
    speeds: Array.from({ length: banks * duties.length }, () => random.unit()),
  };
}

/** A genome like another, some of its genes changed. */
export function changed(random: Random, { places }: Enclosure, genome: Genome, id: number): Genome {
  const within = (value: number, most: number): number => Math.min(most, Math.max(0, value));
  return {
    id,
    options: genome.options.map((option, place) => {
      const most = (places[place]?.options.length ?? 1) - 1;
      if (!random.chance(CHANGE)) return option;
      return random.chance(SMALL)
        ? within(option + random.whole(-OPTION_STEP, OPTION_STEP), most)
        : random.whole(0, most);
    }),
    speeds: genome.speeds.map((speed) => {
      if (!random.chance(2 * CHANGE)) return speed;
      const step = random.chance(0.5) ? SPEED_STEP : SPEED_STEP / 10;
      return random.chance(SMALL)
        ? within(speed + step * (random.unit() + random.unit() + random.unit() - 1.5), 1)
        : random.unit();
    }),
  };
}

/** A genome with each gene of one of two parents. */
export function crossed(random: Random, parents: readonly Genome[], id: number): Genome {
  const [one, other] = parents as readonly [Genome, Genome];
  const either = <Gene>(first: readonly Gene[], second: readonly Gene[]): readonly Gene[] =>
    first.map((gene, index) => (random.chance(0.5) ? gene : (second[index] as Gene)));
  return { id, options: either(one.options, other.options), speeds: either(one.speeds, other.speeds) };
}
