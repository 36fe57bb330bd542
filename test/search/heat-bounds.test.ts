import { describe, expect, it } from 'vitest';
import type { Enclosure, Part } from '../../src/enclosure/enclosure.ts';
import { assemble, type Plant, plantOf } from '../../src/enclosure/machine.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { OBJECTIVES } from '../../src/search/objective.ts';
import { optionForest } from '../../src/search/option-tree.ts';
import { createPromises } from '../../src/search/promise.ts';
import { beginSearch } from '../../src/search/search.ts';
import { createTrial, isAdequate } from '../../src/search/trial.ts';
import { overclaims, worstWarming } from './bound-checks.ts';
import { QUICK } from './brute-force.ts';
import { buildsOf } from './builds.ts';
import { type Random, seeded } from './random.ts';
import { randomEnclosure, type Size } from './random-enclosure.ts';

const SIZES: readonly Size[] = [
  { banks: 1, mostBuilds: 4, mostDuties: 2 },
  { banks: 2, mostBuilds: 2, mostDuties: 1, simple: true },
];

/** Warming below this is rounding of the flows and temperatures [K]. */
const ROUNDING = 1e-6;

/** Limits were drawn for bare parts: a base and leakage make them warmer by some such amount [K]. */
const WARMER = 12;

function dressed(random: Random, part: Part): Part {
  const onFins = part.seat.kind === 'fins';
  const base = {
    footprint: { width: 0.02, height: 0.02 },
    plate: { width: 0.06, height: 0.05 },
    thickness: random.between(0.001, 0.006),
    conductivity: 200,
  };
  return {
    ...part,
    ...(random.chance(0.5)
      ? { slope: 0, leakage: { power: part.power * random.between(0.05, 0.4), growth: 0.02 } }
      : {}),
    ...(onFins && random.chance(0.6) ? { base } : {}),
    ...(random.chance(0.4) ? { paste: { thickness: 5e-5, conductivity: 4, area: 3e-4 } } : {}),
    limits: part.limits.map(({ of, temperature }) => ({ of, temperature: temperature + WARMER })),
  };
}

/** A random enclosure with bases, paste, leakage and walls that let heat through. */
function dressedEnclosure(seed: number): Enclosure {
  const random = seeded(seed);
  const bare = randomEnclosure(seed, SIZES[seed % SIZES.length] as Size);
  const skins = bare.chambers
    .slice(1)
    .map((_, index) => ({ chamber: index + 1, conductance: random.between(0, 2), share: 0.5 }));
  return { ...bare, parts: bare.parts.map((part) => dressed(random, part)), skins };
}

const enclosures = Array.from({ length: 16 }, (_, index) => ({
  seed: 7001 + index,
  enclosure: dressedEnclosure(7001 + index),
}));

describe('with bases, paste, leakage and walls', () => {
  // Reference: brute force on lattices of speeds, which can only be louder than the truth.
  it.each(enclosures)(
    'bounds promise no more than brute force reaches, seed $seed',
    ({ seed, enclosure }) => {
      expect(overclaims(enclosure, fasterIsCooler(plantOf(enclosure)), QUICK, seed)).toEqual([]);
    },
  );

  // Reference: passes at random speeds with one speed raised, no heat of the fans and no recirculation.
  it('a faster fan never warms a part where that is claimed', () => {
    const claimed = enclosures.filter(({ enclosure }) => fasterIsCooler(plantOf(enclosure)));
    expect(claimed.length).toBeGreaterThan(5);
    const broken = claimed.flatMap(({ seed, enclosure }) => {
      const warming = worstWarming(enclosure, seed, 12);
      return warming && warming.by > ROUNDING ? [{ seed, warming }] : [];
    });
    expect(broken).toEqual([]);
  });
});

/** A random enclosure with one bank and one duty whose limits are of probes, heat pipes and panels. */
function otherwiseLimited(seed: number): Enclosure {
  const random = seeded(seed);
  const bare = randomEnclosure(seed, { banks: 1, mostBuilds: 4, mostDuties: 1 });
  const parts = bare.parts.map((part): Part => {
    const { seat, power, limits } = part;
    const temperature = Math.max(...limits.map((limit) => limit.temperature), 318) + WARMER;
    if (seat.kind !== 'fins') return { ...part, limits: [] };
    const pipes = { count: 2, capacity: (power * random.between(1.02, 1.4)) / 2, resistance: 0.05 };
    return {
      ...dressed(random, part),
      slope: 0.006,
      pipes,
      limits: [{ of: 'probe', temperature }],
      probe: 0.5,
    };
  });
  const skins = bare.chambers.slice(1).map((_, index) => ({
    chamber: index + 1,
    conductance: random.between(0, 1),
    share: 0.5,
    limit: 322 + random.between(0, 14),
  }));
  return { ...bare, parts, skins };
}

/** Least energy of a build with one bank over a dense scan of its speeds [-]; infinite if none is adequate. */
function scanned(plant: Plant, build: readonly number[]): number {
  const machine = assemble(plant, build);
  const [duty] = plant.enclosure.duties;
  if (!duty) throw new RangeError('no duty');
  const trial = createTrial(machine, duty);
  let least = Number.POSITIVE_INFINITY;
  const steps = machine.banks.length === 0 ? 1 : 80;
  for (let step = 0; step < steps; step++) {
    const share = steps === 1 ? 1 : step / (steps - 1);
    const point = trial.evaluate(trial.floors.map((floor) => floor ** (1 - share)));
    if (isAdequate(point)) least = Math.min(least, point.energy);
  }
  return least;
}

describe('with limits on probes, heat pipes and panels', () => {
  // Reference: a dense scan of the one speed there is.
  it.each(Array.from({ length: 16 }, (_, index) => 8001 + index))(
    'bounds and search agree with a scan, seed %d',
    (seed) => {
      const enclosure = otherwiseLimited(seed);
      const plant = plantOf(enclosure);
      const distance = enclosure.listener.distance ** 2;
      const { fine, none } = createPromises(enclosure, plant, OBJECTIVES.mean, optionForest(enclosure));
      let least = Number.POSITIVE_INFINITY;
      for (const build of buildsOf(enclosure)) {
        const reached = scanned(plant, build);
        const [promised = 0] = fine(build, none, Number.POSITIVE_INFINITY).energies;
        expect(promised).toBeLessThanOrEqual(reached * distance * (1 + 1e-6));
        least = Math.min(least, reached);
      }
      const search = beginSearch(enclosure, { top: 1, gap: 0.01 });
      while (search.step());
      const [best] = search.best();
      expect(best?.energy ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(least * 1.003);
    },
  );

  it('some are adequate and some are not', () => {
    const adequate = Array.from({ length: 16 }, (_, index) => {
      const search = beginSearch(otherwiseLimited(8001 + index), { top: 1, gap: 0.01 });
      while (search.step());
      return search.best().length > 0;
    });
    expect(new Set(adequate).size).toBe(2);
    expect(adequate.filter(Boolean).length).toBeGreaterThan(5);
  });
});
