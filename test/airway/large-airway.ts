import { type SeriesLeg, type Stage, seriesLeg } from '../../src/airway/series.ts';
import type { Topology } from '../../src/airway/topology.ts';
import { FAN_ASSUMPTIONS } from '../../src/fan/fan-assumptions.ts';
import { lostConductance } from '../../src/fan/mixed-bank.ts';
import { curvePool, elementFrom, elementPool } from './element-pool.ts';
import type { RandomAirway } from './random-airway.ts';
import { between, chance, oneOf, type Random, wholeBetween } from './seeded-random.ts';

/** Most chambers beside outside. */
export const MOST_CHAMBERS = 12;
/** Most legs. */
export const MOST_LEGS = 30;

/** Openings from pinholes to doors, beside those of the pool. */
const openings = [
  elementFrom('orifice', { orifice: '1 mm', sheet: '1 mm' }),
  elementFrom('slot', { slot: '30 x 0.2 mm' }),
  elementFrom('slot', { slot: '400 x 20 mm' }),
  elementFrom('perforated', { perforated: '30 x 20 mm', hole: '2 mm', web: '2 mm', sheet: '1 mm' }),
];

/** Fans side by side, all turning or some dead or taken out, behind others derated and with walls close by or not. */
function randomBank(random: Random): Stage {
  const curve = oneOf(random, curvePool);
  const derating = oneOf(random, [1, 0.9, 0.8]);
  const walls = chance(random, 0.2) ? between(random, 1e3, 1e5) : undefined;
  const stage = { kind: 'bank' as const, curve, derating, ...(walls === undefined ? {} : { walls }) };
  const places = wholeBetween(random, 1, 3);
  if (chance(random, 0.75)) return { ...stage, count: places };
  const lost = wholeBetween(random, 1, places);
  const dead = wholeBetween(random, 0, lost);
  const size = oneOf(random, [0.06, 0.08, 0.12]);
  const conductance = lostConductance(curve, size, { dead, missing: lost - dead }, FAN_ASSUMPTIONS);
  return { ...stage, count: places - lost, conductance };
}

function randomStage(random: Random): Stage {
  const kind = random();
  if (kind < 0.25) return randomBank(random);
  if (kind < 0.32) return { kind: 'empty' };
  return { kind: 'element', element: oneOf(random, kind < 0.5 ? openings : elementPool) };
}

/** A leg of up to five stages of all kinds in random air, some used in part, its banks at any speed or still. */
function randomLeg(random: Random): SeriesLeg {
  const stages = Array.from({ length: wholeBetween(random, 0, 5) }, () => {
    const stage = randomStage(random);
    return stage.kind === 'element' && chance(random, 0.1)
      ? { ...stage, used: between(random, 0.3, 1) }
      : stage;
  });
  const leg = seriesLeg(stages);
  stages.forEach((_, stage) => {
    leg.densities[stage] = between(random, 0.8, 1.3);
    leg.viscosities[stage] = between(random, 1.6e-5, 2.3e-5);
    // A third of the banks stand still, one in six runs flat out.
    leg.ratios[stage] = oneOf(random, [0, 0, 1, between(random, 0.1, 1), between(random, 0.1, 1), 0.25]);
  });
  // A leg without any loss has no weight of air either: nothing would hold the stream back.
  if (chance(random, 0.2) && stages.some(({ kind }) => kind !== 'empty')) leg.lift = between(random, -1, 1);
  leg.refresh();
  return leg;
}

/**
 * An airway of given size: every chamber has a path to outside, the other legs join any two chambers, and one in
 * twenty goes round in one.
 *
 * @param random stream of numbers
 * @param inner chambers beside outside
 * @param count legs, no fewer than chambers
 */
export function airwayOf(random: Random, inner: number, count: number): RandomAirway {
  const from: number[] = [];
  const to: number[] = [];
  for (let leg = 1; leg <= count; leg++) {
    const tree = leg <= inner;
    const one = tree ? leg : wholeBetween(random, 0, inner);
    const step = chance(random, 0.05) ? 0 : wholeBetween(random, 1, inner);
    const other = tree ? wholeBetween(random, 0, leg - 1) : (one + step) % (inner + 1);
    const turned = chance(random, 0.5);
    from.push(turned ? other : one);
    to.push(turned ? one : other);
  }
  const topology: Topology = { chambers: inner + 1, from, to };
  return { topology, legs: from.map(() => randomLeg(random)) };
}

/** An airway of any size up to {@link MOST_CHAMBERS} and {@link MOST_LEGS}. */
export function largeAirway(random: Random): RandomAirway {
  const inner = wholeBetween(random, 1, MOST_CHAMBERS);
  return airwayOf(random, inner, wholeBetween(random, inner + 1, MOST_LEGS));
}
