import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { buildsOf } from '../search/builds.ts';
import { seeded } from '../search/random.ts';
import { randomEnclosure } from '../search/random-enclosure.ts';
import { type Stated, statedAt } from './truth.ts';

/** A build of an enclosure at some speeds, in every duty. */
export interface Case {
  readonly enclosure: Enclosure;
  readonly stated: readonly Stated[];
}

/** A part hotter than this is near running away: what it may be off by has no end [K]. */
const TOO_HOT = 273.15 + 150;

/** A random build at random speeds; null where nothing settles or a part nearly runs away. */
function caseOf(seed: number): Case | null {
  const random = seeded(seed);
  const enclosure = randomEnclosure(seed, { banks: 1 + (seed % 3), mostBuilds: 6, mostDuties: 2 });
  const build = random.pick(buildsOf(enclosure));
  const { banks } = assemble(plantOf(enclosure), build);
  if (banks.length === 0) return null;
  const stated = enclosure.duties.map((duty) =>
    statedAt(
      enclosure,
      build,
      duty,
      Float64Array.from(banks, ({ bank }) => random.between(bank.fan.holdFloor, 1)),
    ),
  );
  const met = stated.filter((each) => each !== null);
  if (met.length < stated.length) return null;
  const hottest = Math.max(...met.flatMap(({ state }) => Array.from(state.partTemperatures)));
  return hottest < TOO_HOT ? { enclosure, stated: met } : null;
}

/** The first such builds from a seed on. */
export function randomCases(count: number, from = 1): readonly Case[] {
  const found: Case[] = [];
  for (let seed = from; found.length < count; seed++) {
    const one = caseOf(seed);
    if (one) found.push(one);
  }
  return found;
}
