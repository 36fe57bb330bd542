// Compares the quietest speeds of every build in every duty with brute force, whatever the list of the search would
// make of the build. Arguments: first seed, number of cases, banks (0: mixed), fine or quick lattices.
// npx rolldown test/fuzz/speeds.ts --platform node --format esm --file reports/speeds.mjs
// node reports/speeds.mjs 1 500 2 fine
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { solveBuild } from '../../src/search/solve-build.ts';
import { levelOf } from '../../src/sound/levels.ts';
import { quietestByForce } from '../search/brute-force.ts';
import { buildsOf } from '../search/builds.ts';
import { AGREED } from '../search/comparison.ts';
import { probeOf } from '../search/probe.ts';
import { randomEnclosure } from '../search/random-enclosure.ts';
import { runFrom } from './sizes.ts';

const run = runFrom(process.argv.slice(2));
const show = (ratios: Iterable<number>): string => Array.from(ratios, (ratio) => ratio.toFixed(4)).join('/');
const passes: number[] = [];
const outcomes = new Map<string, number>();
const causes = new Map<string, number>();
let worstGain = 0;

/** Where a disagreement lies: limits held with this much to spare bind nothing [K]. */
const SLACK = -0.02;
function causeOf(missed: boolean, monotone: boolean, mine: number, theirs: number): string {
  if (missed)
    return monotone ? 'missed although faster was taken to be cooler' : 'missed between the points tried';
  const place = (worst: number): string => (worst < SLACK ? 'slack' : 'at a limit');
  return `louder, ${place(mine)}, where the quietest is ${place(theirs)}`;
}

for (const seed of run.seeds) {
  const enclosure = randomEnclosure(seed, run.sizeOf(seed));
  const plant = plantOf(enclosure);
  const monotone = fasterIsCooler(plant);
  for (const build of buildsOf(enclosure)) {
    const machine = assemble(plant, build);
    const solved = solveBuild(machine, monotone);
    passes.push(solved.passes / solved.duties.length);
    for (const { duty, point, adequate } of solved.duties) {
      const forced = quietestByForce(probeOf(machine, duty), run.fineness, Number.POSITIVE_INFINITY);
      const level = forced ? levelOf(forced.energy) : Number.POSITIVE_INFINITY;
      const mine = adequate ? levelOf(point.energy) : Number.POSITIVE_INFINITY;
      const missed = forced !== null && !adequate;
      const louder = forced !== null && adequate && mine > level + AGREED;
      const kind = missed
        ? 'missed'
        : louder
          ? 'louder'
          : forced
            ? 'agreed'
            : adequate
              ? 'found more'
              : 'inadequate';
      const group = `${machine.banks.length} banks, ${monotone ? 'monotone' : 'other'}: ${kind}`;
      outcomes.set(group, (outcomes.get(group) ?? 0) + 1);
      if (adequate && forced) worstGain = Math.max(worstGain, level - mine);
      if (!missed && !louder) continue;
      const cause = causeOf(missed, monotone, point.worst, forced.worst);
      causes.set(cause, (causes.get(cause) ?? 0) + 1);
      console.log(
        `seed ${seed} banks ${run.sizeOf(seed).banks}${monotone ? ' monotone' : ''} [${build.join(' ')}] ${duty.id} ` +
          `share ${duty.share.toFixed(2)} ${cause}: ` +
          `${missed ? `coolest ${point.worst.toFixed(3)} K` : mine.toFixed(3)} at ${show(point.ratios)} ` +
          `against ${level.toFixed(3)} at ${show(forced.speeds.map(Math.exp))}`,
      );
    }
  }
}

passes.sort((a, b) => a - b);
const quantile = (share: number): string => (passes[Math.floor(share * (passes.length - 1))] ?? 0).toFixed(0);
for (const counts of [outcomes, causes]) {
  for (const [group, count] of [...counts].sort(([a], [b]) => (a < b ? -1 : 1))) console.log(group, count);
}
console.log(`passes a duty: median ${quantile(0.5)}, 90 % ${quantile(0.9)}, most ${quantile(1)}`);
console.log(`search quieter than brute force by ${worstGain.toFixed(4)} dB at most`);
