// Long check of what the search takes for granted. Arguments: first seed, number of cases, banks (0: mixed), fine or
// quick lattices, simple for airways with one chamber only.
// npx rolldown test/fuzz/bounds.ts --platform node --format esm --file reports/bounds.mjs
// node reports/bounds.mjs 1 500 2 quick simple
import { plantOf } from '../../src/enclosure/machine.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { overclaims, worstWarming } from '../search/bound-checks.ts';
import { randomEnclosure } from '../search/random-enclosure.ts';
import { runFrom } from './sizes.ts';

const run = runFrom(process.argv.slice(2));
/** Warming that counts as one [K]. */
const NOTHING = 1e-6;

const tallies = new Map<string, { count: number; most: number }>();
function count(name: string, by: number): void {
  const tally = tallies.get(name) ?? { count: 0, most: 0 };
  tallies.set(name, { count: tally.count + 1, most: Math.max(tally.most, by) });
}

for (const seed of run.seeds) {
  const enclosure = randomEnclosure(seed, run.sizeOf(seed));
  const place = `seed ${seed} banks ${run.sizeOf(seed).banks}`;
  const monotone = fasterIsCooler(plantOf(enclosure));
  count(monotone ? 'faster is cooler' : 'faster may be warmer', 0);
  const warming = worstWarming(enclosure, seed, 20);
  if (monotone && warming && warming.by > NOTHING) {
    count('monotone, yet a faster fan warms a limited part [K]', warming.by);
    if (warming.by > 1e-3) console.log(place, 'warming', JSON.stringify(warming));
  }
  if (!monotone && (warming?.by ?? 0) <= NOTHING) count('nothing claimed, yet nothing warmed', 0);
  for (const { bound, build, duty, by, reached } of overclaims(enclosure, monotone, run.fineness, seed)) {
    count(`${bound} claims too much`, by);
    const claim = `by ${by.toFixed(5)}, reached ${reached.toFixed(3)} dB`;
    console.log(`${place}${monotone ? ' monotone' : ''} [${build.join(' ')}] ${duty}: ${bound} ${claim}`);
  }
}
for (const [name, tally] of tallies)
  console.log(`${name}: ${tally.count}, most ${tally.most.toExponential(2)}`);
