import { it } from 'vitest';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { rank } from '../../src/search/rank.ts';
import { rankView } from '../../src/presentation/rank-view.ts';
import { solveView } from '../../src/presentation/solve-view.ts';
import { plain } from '../../src/presentation/paint.ts';
import { fans } from '../reading/scenario-cases.ts';
import { bare } from '../reading/good-scenario.ts';
import { changed } from '../reading/marked.ts';
it('x', () => {
  for (const extra of ['pipes: { count: 4, capacity: 40 W }', 'pipes: { count: 2, capacity: 40 W }']) {
  let t = changed(bare, 'fixed: 0.16 K/W, slope: 0.4 %/K, limit: 85 °C', `${extra}, base: { footprint: 20 x 16 mm, plate: 60 x 60 mm, thickness: 5 mm, conductivity: 390 W/(m K) }, paste: { thickness: 30 um, conductivity: 8 W/(m K), area: 3 cm² }, fixed: 0.05 K/W, leakage: { power: 25 W, growth: 2 %/K }, at: 60 °C, limit: { part: 85 °C, probe: 75 °C }`);
  t = changed(t, 'airway:', '  - { part: supply, in: core, wall: { reading: 133 W, tier: gold, rating: 150 W }, fixed: 0.5 K/W }\nskin: { core: { conductance: 1.2 W/K, material: metal, limit: 48 °C } }\nairway:');
  const o = readScenario('x.yaml', t, fans);
  if (!o.ok) { console.log(o.problems); return; }
  const r = rank(o.enclosure);
  console.log(rankView(r, { paint: plain, tie: 1, width: 110 } as never));
  const out = r.rows[0]?.outcome ?? r.nearestMiss?.outcome;
  if (out) console.log(solveView(out, { paint: plain, width: 110, duty: 'hot day', margin: 2 } as never));
  }
});
