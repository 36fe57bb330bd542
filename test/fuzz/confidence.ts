// Long comparison of the search for builds that are sure enough with brute force. Arguments: first seed, number of
// cases, banks (0: mixed).
// npx rolldown --input test/fuzz/confidence.ts --platform node --format esm --file reports/confidence.mjs
// node reports/confidence.mjs 1 200 1
import { allLevels, confidentRanking } from '../bands/brute-confidence.ts';
import { randomEnclosure } from '../search/random-enclosure.ts';
import { runFrom } from './sizes.ts';

const TOP = 3;
/** Speeds are found to within some hundredths of a decibel of the probability asked for [dB]. */
const ALLOWED = 0.05;

const run = runFrom(process.argv.slice(2));
let wrong = 0;
for (const seed of run.seeds) {
  const enclosure = randomEnclosure(seed, run.sizeOf(seed));
  const found = confidentRanking(enclosure, TOP)
    .rows.map(({ outcome }) => outcome.level)
    .toSorted((one, other) => one - other);
  const expected = allLevels(enclosure).slice(0, TOP);
  const same =
    found.length === expected.length &&
    found.every((level, index) => Math.abs(level - (expected[index] as number)) < ALLOWED);
  if (same) continue;
  wrong += 1;
  console.log(`seed ${seed}: found ${found.join(', ')}, expected ${expected.join(', ')}`);
}
console.log(`${run.seeds.length} enclosures: ${wrong} differ`);
process.exitCode = wrong > 0 ? 1 : 0;
