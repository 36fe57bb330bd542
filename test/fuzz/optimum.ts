// Long comparison of the search with brute force. Arguments: first seed, number of cases, banks (0: mixed), fine or
// quick lattices. Prints every disagreement so that it can be repeated by its seed.
// npx rolldown test/fuzz/optimum.ts --platform node --format esm --file reports/optimum.mjs
// node reports/optimum.mjs 1 2000 3 fine
import { type Comparison, compare, inWords } from '../search/comparison.ts';
import { randomEnclosure } from '../search/random-enclosure.ts';
import { runFrom } from './sizes.ts';

const TOP = 5;
const run = runFrom(process.argv.slice(2));

function describe(seed: number, { search, forced, disagreements }: Comparison): void {
  for (const disagreement of disagreements) {
    const airway = `banks ${run.sizeOf(seed).banks}${search.monotone ? ' monotone' : ''}`;
    console.log(`seed ${seed} ${airway}: ${inWords(disagreement)}`);
    const found = forced[disagreement.place - 1];
    const speeds = found?.speeds.map((list) => list.map((ratio) => ratio.toFixed(4)).join('/'));
    console.log(`  brute force: ${speeds?.join(', ') ?? 'nothing'}`);
  }
}

let wrong = 0;
let gained = 0;
let monotone = 0;
for (const seed of run.seeds) {
  const comparison = compare(randomEnclosure(seed, run.sizeOf(seed)), TOP, run.fineness);
  describe(seed, comparison);
  if (comparison.disagreements.length > 0) wrong += 1;
  if (comparison.search.monotone) monotone += 1;
  if (comparison.gained > 0.02) {
    console.log(`seed ${seed}: the search is quieter by ${comparison.gained.toFixed(3)} dB`);
  }
  gained = Math.max(gained, comparison.gained);
}
console.log(
  `${run.seeds.length} cases, ${wrong} with disagreements, ${monotone} monotone, ` +
    `search quieter than brute force by ${gained.toFixed(4)} dB at most`,
);
process.exitCode = wrong > 0 ? 1 : 0;
