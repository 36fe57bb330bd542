// Conservation of mass and energy and the second law on 20 000 random enclosures with heat. Started by
// `npm run fuzz:heat`; `node reports/conservation.mjs 100000 7` takes another number of them and another seed.
import { seededRandom } from '../airway/seeded-random.ts';
import { judge, type Missed } from '../enclosure/heat-laws.ts';
import { randomHeated } from '../enclosure/random-heat.ts';

/** What may be missed: 1e-10 kg/s, 1e-6 of the load, and rounding. */
const ALLOWED: Missed = { mass: 1e-10, energy: 1e-6, budget: 1e-6, entropy: 1e-8, cold: 1e-12, floor: 1e-9 };

const count = Number(process.argv[2] ?? 20_000);
const random = seededRandom(Number(process.argv[3] ?? 1));
const worst: Record<string, number> = {};
let failed = 0;
let broken = 0;
const started = performance.now();
for (let trial = 0; trial < count; trial++) {
  const { machine, ratios } = randomHeated(random);
  const { failure, hottest, missed } = judge(machine, ratios);
  if (failure) {
    failed += 1;
    continue;
  }
  for (const [law, allowed] of Object.entries(ALLOWED)) {
    const found = missed[law as keyof Missed];
    worst[law] = Math.max(worst[law] ?? 0, found);
    // Beyond 1000 K the rounding of a flow that hardly moves is watts.
    if (found <= allowed || (law === 'budget' && hottest > 1000)) continue;
    broken += 1;
    console.log(`trial ${trial}: ${law} missed by ${found}, hottest ${hottest} K`);
  }
}
const each = (performance.now() - started) / count;
console.log(
  `${count} enclosures, ${each.toFixed(3)} ms each, ${failed} without an answer, ${broken} laws broken`,
);
console.log(worst);
process.exitCode = broken > 0 ? 1 : 0;
