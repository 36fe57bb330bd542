import { describe, expect, it } from 'vitest';
import type { Build, Duty, Enclosure } from '../../../src/enclosure/enclosure.ts';
import { withLostFans } from '../../../src/enclosure/lost-fans.ts';
import { assemble, type Machine, plantOf } from '../../../src/enclosure/machine.ts';
import type { BuildOutcome } from '../../../src/enclosure/outcome.ts';
import { createPowerBound, leastPowerSpeeds, thinnestAir } from '../../../src/search/asks/least-power.ts';
import { powerPromises, wattsOf } from '../../../src/search/asks/power-promises.ts';
import { fasterIsCooler } from '../../../src/search/monotone-airway.ts';
import { optionForest } from '../../../src/search/option-tree.ts';
import { quietestSpeeds } from '../../../src/search/quietest-speeds.ts';
import { rank } from '../../../src/search/rank.ts';
import { createTrial, type Point } from '../../../src/search/trial.ts';
import { energy, levelOf } from '../../../src/sound/levels.ts';
import { QUICK, quietestByForce } from '../brute-force.ts';
import { buildsOf } from '../builds.ts';
import type { Probe } from '../probe.ts';
import { probeOf } from '../probe.ts';
import { asking, bankPlacesOf, onOneHeader, pricedEnclosure } from './priced.ts';
import { pointProbe, powerProbe, sharedProbe, workingPoints } from './wished-probe.ts';

/** The search may be this much worse than what trying everything finds [dB]. */
const AGREED = 0.02;
/** Passes agree to about this [K]. */
const ACCURACY = 3e-5;

interface Case {
  readonly seed: number;
  readonly machine: Machine;
  readonly duty: Duty;
}

/** Builds of random enclosures of two places for fans, each in its first duty; some airways set fans against each other. */
function casesOf(seeds: readonly number[], change: (enclosure: Enclosure) => Enclosure): readonly Case[] {
  return seeds.flatMap((seed) => {
    const size = { banks: 2, mostBuilds: 3, mostDuties: 1, simple: seed % 3 === 0 };
    const enclosure = change(pricedEnclosure(seed, size));
    const plant = plantOf(enclosure);
    return buildsOf(enclosure)
      .map((build) => assemble(plant, build))
      .filter(({ banks }) => banks.length === 2)
      .slice(0, 1)
      .map((machine) => ({ seed, machine, duty: enclosure.duties[0] as Duty }));
  });
}

const SEEDS = Array.from({ length: 9 }, (_, index) => 4101 + index);

function searched({ machine, duty }: Case): Point | null {
  return quietestSpeeds(createTrial(machine, duty), fasterIsCooler(machine.plant)).best;
}

/** What is wrong with speeds found, against those of brute force by a probe of the same. */
function misfits(
  found: readonly { readonly seed: number; readonly mine: number; readonly theirs: number }[],
) {
  return found.filter(({ mine, theirs }) => mine > theirs + AGREED);
}

function levelsOf({ seed }: Case, point: Point | null, probe: Probe) {
  const forced = quietestByForce(probe, QUICK, Number.POSITIVE_INFINITY);
  const level = (value: number | undefined): number =>
    value === undefined ? Number.POSITIVE_INFINITY : levelOf(value);
  return { seed, mine: level(point?.energy), theirs: level(forced?.energy) };
}

describe('speeds at which no fan stalls and no air runs backwards', () => {
  const cases = casesOf(SEEDS, (enclosure) => asking(enclosure, { noStall: true, noBackFlow: true }));
  const found = cases.map((each) => ({ each, point: searched(each) }));

  // Reference: passes of their own at the speeds found, with the curve's peak and the sign of the flow.
  it('keep clear of both', () => {
    for (const { each, point } of found) {
      if (!point) continue;
      const points = workingPoints(each.machine, each.duty)(point.ratios.map(Math.log));
      expect(points?.clearOfStall).toBeGreaterThan(-1e-7);
      expect(points?.leastFlow).toBeGreaterThan(0.01 - 1e-6);
      expect(probeOf(each.machine, each.duty).at(point.ratios.map(Math.log)).worst).toBeLessThan(ACCURACY);
    }
  });

  // Reference: brute force on lattices of speeds of which those with stall or back-flow are left out.
  it('are the quietest of brute force', () => {
    const levels = found.map(({ each, point }) => levelsOf(each, point, pointProbe(each.machine, each.duty)));
    expect(misfits(levels)).toEqual([]);
  });

  it('differ from the quietest of all, or do not exist, in some', () => {
    const plain = casesOf(SEEDS, (enclosure) => enclosure).map(searched);
    const louder = found.filter(({ point }, index) => {
      const free = plain[index];
      return free && (!point || point.energy > free.energy * 1.01);
    });
    expect(louder.length).toBeGreaterThan(1);
    expect(found.some(({ point }) => point !== null)).toBe(true);
  });
});

describe('banks on one header', () => {
  const cases = casesOf(SEEDS, (enclosure) => onOneHeader(enclosure));
  const found = cases.map((each) => ({ each, point: searched(each) }));

  it('run at one share of full speed', () => {
    for (const { point } of found) {
      if (point) expect(point.ratios[0]).toBe(point.ratios[1]);
    }
    expect(found.filter(({ point }) => point !== null).length).toBeGreaterThan(4);
  });

  // Reference: brute force on a line of speeds that both banks have.
  it('are as quiet as brute force finds them', () => {
    const levels = found.map(({ each, point }) =>
      levelsOf(each, point, sharedProbe(each.machine, each.duty)),
    );
    expect(misfits(levels)).toEqual([]);
  });

  it('keep out of the bands that any of them avoids', () => {
    for (const { each, point } of found) {
      if (!point) continue;
      const { enclosure } = each.machine.plant;
      const ratio = point.ratios[0] as number;
      const last = bankPlacesOf(enclosure).at(-1) as number;
      const { fullSpeed } = each.machine.banks[1]?.bank.fan ?? { fullSpeed: 1 };
      const avoid = [{ from: 0.97 * ratio * fullSpeed, to: 1.02 * ratio * fullSpeed }];
      const places = enclosure.places.map((place, index) =>
        place.kind === 'bank' && index === last ? { ...place, avoid } : place,
      );
      const machine = assemble(plantOf({ ...enclosure, places }), each.machine.build);
      const moved = searched({ ...each, machine });
      const share = (moved?.ratios[0] ?? 0) / ratio;
      if (moved) expect(share <= 0.97 + 1e-9 || share >= 1.02 - 1e-9).toBe(true);
      if (moved) expect(moved.energy).toBeGreaterThanOrEqual(point.energy * (1 - 1e-4));
    }
  });
});

describe('a whole ranking with such speeds', () => {
  const ways = [
    ['without stall and back-flow', pointProbe, { asks: { noStall: true, noBackFlow: true } }],
    ['with all banks on one header', sharedProbe, { headers: true }],
  ] as const;

  // Reference: brute force on lattices of the speeds that are left, build by build.
  it.each(ways)('%s has the quietest build first', (_, probeFor, change) => {
    let found = 0;
    for (const seed of [9001, 9002, 9003, 9006]) {
      const plain = pricedEnclosure(seed, { banks: 2, mostBuilds: 3, mostDuties: 1, simple: seed % 3 === 0 });
      const enclosure = 'headers' in change ? onOneHeader(plain) : { ...plain, ...change };
      const plant = plantOf(enclosure);
      const levels = buildsOf(enclosure).flatMap((build) => {
        const machine = assemble(plant, build);
        const probe = probeFor(machine, enclosure.duties[0] as Duty);
        const best =
          machine.banks.length > 0 ? quietestByForce(probe, QUICK, Number.POSITIVE_INFINITY) : null;
        return best ? [levelOf(best.energy)] : [];
      });
      const [first] = rank(enclosure, { top: 1, gap: 0.01 }).rows;
      if (levels.length > 0) expect(first?.outcome.level).toBeLessThan(Math.min(...levels) + AGREED);
      found += levels.length;
    }
    expect(found).toBeGreaterThan(2);
  });
});

describe('speeds of least power', () => {
  const cases = casesOf(SEEDS.slice(0, 6), (enclosure) => enclosure);

  // Reference: brute force on lattices of speeds by the cube law of electrical power, under a cap on the level.
  it('are those of brute force under a cap on the level', () => {
    const rows = cases.flatMap((each) => {
      const quietest = searched(each);
      if (!quietest) return [];
      const cap = levelOf(quietest.energy) + 1.5;
      const trial = createTrial(each.machine, each.duty);
      const point = leastPowerSpeeds(trial, fasterIsCooler(each.machine.plant), energy(cap));
      const forced = quietestByForce(
        powerProbe(each.machine, each.duty, cap),
        QUICK,
        Number.POSITIVE_INFINITY,
      );
      expect(levelOf(point?.energy ?? Number.POSITIVE_INFINITY)).toBeLessThan(cap + 1e-6);
      expect(point?.worst).toBeLessThan(ACCURACY);
      return [
        {
          seed: each.seed,
          mine: point?.fanPower ?? 1e9,
          theirs: forced?.energy ?? 1e9,
          quiet: quietest.fanPower,
        },
      ];
    });
    expect(rows.filter(({ mine, theirs }) => mine > theirs * 1.005)).toEqual([]);
    expect(rows.filter(({ mine, quiet }) => mine < quiet * 0.98).length).toBeGreaterThan(0);
    expect(rows.length).toBeGreaterThan(3);
  });
});

describe('the bound of the power of a build', () => {
  const sizes = Array.from({ length: 14 }, (_, index) => 8101 + index).map((seed) => ({
    seed,
    size: { banks: 1 + (seed % 2), mostBuilds: 2, mostDuties: 1, simple: seed % 3 > 0 },
  }));

  // Reference: brute force on lattices of speeds by the cube law of electrical power.
  it('is no more than brute force reaches, and a ranking finds the least', () => {
    const ratios = sizes.flatMap(({ seed, size }) => {
      const enclosure = pricedEnclosure(seed, size);
      const forest = optionForest(enclosure);
      const promises = powerPromises(enclosure, forest);
      const plain = createPowerBound(enclosure, forest);
      const plant = plantOf(enclosure);
      const powers: number[] = [];
      const found = buildsOf(enclosure).flatMap((build) => {
        const { energies } = promises.fine(build, promises.none, Number.POSITIVE_INFINITY);
        const machine = assemble(plant, build);
        const probe = powerProbe(machine, enclosure.duties[0] as Duty, Number.MAX_VALUE);
        const least = quietestByForce(probe, QUICK, Number.POSITIVE_INFINITY)?.energy;
        const bound = Math.max(plain(build), thinnestAir(enclosure) * wattsOf(enclosure, energies));
        if (least === undefined) return [];
        powers.push(least);
        return [bound / least];
      });
      const [first] = rank(enclosure, { top: 1, gap: 0.01, by: 'power' }).rows;
      if (powers.length > 0) expect(first?.outcome.fanPower).toBeLessThan(1.005 * Math.min(...powers));
      return found;
    });
    expect(ratios.length).toBeGreaterThan(8);
    expect(ratios.filter((ratio) => ratio > 1)).toEqual([]);
    expect(ratios.filter((ratio) => ratio > 0.5).length).toBeGreaterThan(2);
  });
});

describe('builds of which little tone risk is asked', () => {
  // Reference: the points of each adequate build at its quietest speeds, one by one.
  it('are those whose quietest speeds have no more points', () => {
    let out = 0;
    for (const seed of [41, 42, 1021]) {
      const size = { banks: seed > 1000 ? 2 : 1, mostBuilds: 5, mostDuties: 1 };
      const enclosure = pricedEnclosure(seed, size);
      const points = (outcome: BuildOutcome): number =>
        Math.max(0, ...outcome.duties.flatMap(({ sound }) => sound.tones.banks.map((each) => each.points)));
      const all = rank(enclosure, { top: 100, gap: 0.01 }).rows.map(({ outcome }) => outcome);
      for (const tonePoints of [0, 1]) {
        const { rows, count } = rank(asking(enclosure, { tonePoints }), { top: 100, gap: 0.01 });
        const kept = all.filter((outcome) => points(outcome) <= tonePoints);
        expect(rows.map(({ outcome }) => outcome.build.options.join()).sort()).toEqual(
          kept.map(({ build }) => build.options.join()).sort(),
        );
        const refused = count.ruledOut.find(({ bound }) => bound === 'more tonal than asked')?.builds ?? 0;
        expect(refused).toBe(all.length - kept.length);
        out += refused;
      }
    }
    expect(out).toBeGreaterThan(0);
  });
});

describe('builds that survive any dead fan', () => {
  /** Kelvins over a limit with one fan dead, the others at full speed, by a probe of its own. */
  function worstOver(enclosure: Enclosure, build: Build): number {
    let worst = Number.NEGATIVE_INFINITY;
    for (const place of bankPlacesOf(enclosure)) {
      const there = enclosure.places[place];
      if (there?.kind !== 'bank' || !there.options[build[place] as number]) continue;
      const lost = withLostFans(enclosure, build, [{ place, dead: 1, missing: 0 }]);
      const machine = assemble(plantOf(lost), build);
      for (const duty of enclosure.duties) {
        const probe = probeOf(machine, duty);
        worst = Math.max(worst, probe.at(probe.floors.map(() => 0)).worst);
      }
    }
    return worst;
  }

  // Reference: each fan of each build in turn dead, solved by itself.
  it('are left, and no others', () => {
    let kept = 0;
    let gone = 0;
    for (const seed of [31, 33, 1011, 1013]) {
      const size = { banks: seed > 1000 ? 2 : 1, mostBuilds: 5, mostDuties: 2 };
      const enclosure = pricedEnclosure(seed, size);
      const all = rank(enclosure, { top: 100, gap: 0.01 }).rows.map(({ outcome }) => outcome.build.options);
      const left = rank(asking(enclosure, { deadFan: true }), { top: 100, gap: 0.01 }).rows;
      const expected = all.filter((build) => worstOver(enclosure, build) <= 0);
      expect(left.map(({ outcome }) => outcome.build.options.join()).sort()).toEqual(
        expected.map((build) => build.join()).sort(),
      );
      kept += expected.length;
      gone += all.length - expected.length;
    }
    expect(kept).toBeGreaterThan(0);
    expect(gone).toBeGreaterThan(0);
  });
});
