import { describe, expect, it } from 'vitest';
import { elementLoss } from '../../src/airway/series.ts';
import type { BankPlace, Build, Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { bankIn } from '../../src/enclosure/stages.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { rank } from '../../src/search/rank.ts';
import { solveBuild } from '../../src/search/solve-build.ts';
import { allBuilds } from '../../src/search/space.ts';
import { scenarioFiles, shippedScenario } from './shipped.ts';

const running = (enclosure: Enclosure, build: Build) =>
  enclosure.places.filter((_, place) => bankIn(enclosure, build, place) !== null).length;

/** Level of the mean sound energy of a build, infinite if it is not adequate. */
function levelOf(enclosure: Enclosure, build: Build): number {
  const plant = plantOf(enclosure);
  const solved = solveBuild(assemble(plant, build), fasterIsCooler(plant));
  if (!solved.duties.every(({ adequate }) => adequate)) return Number.POSITIVE_INFINITY;
  return 10 * Math.log10(solved.duties.reduce((sum, { duty, point }) => sum + duty.share * point.energy, 0));
}

/** k = R·Q0²/p0 of a fan against the passive elements of all legs in series, at its free delivery. */
function resistanceNumber(enclosure: Enclosure, build: Build): number {
  const bank = enclosure.places
    .map((_, place) => bankIn(enclosure, build, place))
    .find((found) => found !== null);
  if (!bank) throw new Error('no fan in the build');
  const { freeDelivery, shutOff } = bank.fan.curve;
  const loss = enclosure.places.reduce((sum, place, index) => {
    if (place.kind !== 'element') return sum;
    const element = place.options[build[index] ?? 0]?.element;
    return element ? sum + elementLoss(element, freeDelivery, 1.2, 1.81e-5) : sum;
  }, 0);
  return loss / shutOff;
}

describe('the shipped scenarios', () => {
  it.each(scenarioFiles)('$file says that it is invented and reads without a problem', ({ file, text }) => {
    expect(text).toMatch(/^# Invented scenario: no real product\./);
    expect(shippedScenario(file.replace('.yaml', '')).parts.length).toBeGreaterThan(0);
  });
});

describe('the desk scanner', () => {
  const enclosure = shippedScenario('desk-scanner');

  it('has two heat sources, a bank on each side of the stack, a bypass gap, an exhaust bank, three duties', () => {
    expect(enclosure.parts).toHaveLength(2);
    expect(enclosure.duties).toHaveLength(3);
    expect(enclosure.legs.map((leg) => leg.id)).toEqual(['intake', 'gap-round-stack', 'exhaust']);
    expect(enclosure.places.filter((place) => place.kind === 'bank').map((place) => place.id)).toEqual([
      'push',
      'pull',
      'exit',
    ]);
  });

  it('is ranked with ten adequate builds, quietest first, every limit held in every duty', () => {
    const { rows, complete, count } = rank(enclosure);
    expect(rows).toHaveLength(10);
    expect(complete).toBe(true);
    expect(count.solved + count.ruledOut.reduce((sum, { builds }) => sum + builds, 0)).toBe(count.space);
    for (const { outcome } of rows) {
      expect(outcome.adequate).toBe(true);
      for (const duty of outcome.duties) expect(duty.tightest?.margin).toBeGreaterThanOrEqual(-1e-6);
    }
    const quietest = Math.min(...rows.map(({ outcome }) => outcome.level));
    expect(rows[0]?.outcome.level).toBeLessThan(quietest + 1);
  }, 60_000);
});

describe('the shelf charger', () => {
  const enclosure = shippedScenario('shelf-charger');
  const ranking = rank(enclosure, { top: 5, gap: 0.01 });

  it('admits no fan deeper than 15 mm', () => {
    const banks = enclosure.places.filter((place): place is BankPlace => place.kind === 'bank');
    for (const { options } of banks) {
      for (const bank of options) expect(bank?.fan.depth ?? 0).toBeLessThanOrEqual(0.015);
    }
  });

  it('is won by two fans in series, at least 1 dB quieter than any single one', () => {
    const best = ranking.rows[0]?.outcome;
    expect(best?.build.arrangement).toBe('push-pull on comb');
    const single = allBuilds(enclosure).filter((build) => running(enclosure, build) === 1);
    const quietestSingle = Math.min(...single.map((build) => levelOf(enclosure, build)));
    expect(quietestSingle - (best?.level ?? 0)).toBeGreaterThan(1);
  });

  // Source: for a fan p = p0(1 − (Q/Q0)²) on a square-law path, series beats parallel above k = 1.5 (derived).
  it('because its path resists strongly: k is above 1.5', () => {
    const build = ranking.rows[0]?.outcome.build.options ?? [];
    expect(resistanceNumber(enclosure, build)).toBeGreaterThan(1.5);
  });
});

describe('the open amplifier', () => {
  const enclosure = shippedScenario('open-amplifier');
  const ranking = rank(enclosure, { top: 3, gap: 0.01 });

  it('is won by a single fan: the same fan doubled in series is louder', () => {
    const best = ranking.rows[0]?.outcome;
    const options = best?.build.options ?? [];
    expect(running(enclosure, options)).toBe(1);
    const used = enclosure.places.findIndex((_, place) => bankIn(enclosure, options, place) !== null);
    const empty = enclosure.places.findIndex((place, at) => place.kind === 'bank' && at !== used);
    const doubled = options.with(empty, options[used] ?? 0);
    expect(running(enclosure, doubled)).toBe(2);
    expect(levelOf(enclosure, doubled)).toBeGreaterThan((best?.level ?? 0) + 1);
  });

  it('and no pair of fans is quieter', () => {
    for (const { outcome } of ranking.rows) {
      if (running(enclosure, outcome.build.options) === 1) continue;
      expect(outcome.level).toBeGreaterThan(ranking.rows[0]?.outcome.level ?? Number.POSITIVE_INFINITY);
    }
  });

  // Source: as above; far below the break-even, the second fan adds little flow and all its noise.
  it('because its path hardly resists: k is below 0.5', () => {
    const build = ranking.rows[0]?.outcome.build.options ?? [];
    expect(resistanceNumber(enclosure, build)).toBeLessThan(0.5);
  });
});

describe('the wall cabinet', () => {
  it('is quietest with the most open vents, and tight ones cost decibels', () => {
    const enclosure = shippedScenario('wall-cabinet');
    const { rows } = rank(enclosure, { top: 3, gap: 0.01 });
    const best = rows[0]?.outcome;
    const held = Object.fromEntries((best?.build.places ?? []).map(({ place, holds }) => [place, holds]));
    expect(held['bottom-vent']).toBe('hole 6 mm, web 1.5 mm');
    expect(held['top-vent']).toBe('hole 8 mm');
    const tight = enclosure.places.findIndex((place) => place.id === 'top-vent');
    const tightened = (best?.build.options ?? []).with(tight, 0);
    expect(levelOf(enclosure, tightened)).toBeGreaterThan((best?.level ?? 0) + 1);
  }, 60_000);
});

describe('the drive dock', () => {
  it('cannot be met, and the nearest miss is named', () => {
    const ranking = rank(shippedScenario('sealed-drive-dock'));
    expect(ranking.rows).toHaveLength(0);
    expect(ranking.complete).toBe(true);
    expect(ranking.nearestMiss?.part).toBe('controller');
    expect(ranking.nearestMiss?.duty).toBe('hot day');
    expect(ranking.nearestMiss?.over).toBeGreaterThan(1);
  });
});
