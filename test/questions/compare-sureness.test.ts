import { describe, expect, it } from 'vitest';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { plain } from '../../src/presentation/paint.ts';
import { compareDocument } from '../../src/presentation/questions/compare-data.ts';
import { compareView } from '../../src/presentation/questions/compare-view.ts';
import { type Comparison, compare, type Way } from '../../src/questions/compare/compare.ts';
import { responder, surenessOf } from '../../src/questions/compare/sureness.ts';
import { fanVariants, type Variant } from '../../src/questions/compare/variants.ts';
import { newDraw, statedAt, type Truth, truthOf } from '../bands/truth.ts';
import { readBoth } from '../scenarios/two-fans.ts';
import { buildsOf } from '../search/builds.ts';
import { seeded } from '../search/random.ts';
import { randomEnclosure } from '../search/random-enclosure.ts';

const WAYS: readonly Way[] = ['full', 'equalLevel', 'equalMargin'];

/** Two builds with fans of a random enclosure of one duty. */
function randomPair(seed: number): { readonly enclosure: Enclosure; readonly variants: readonly Variant[] } {
  const enclosure = randomEnclosure(seed, { banks: 1 + (seed % 2), mostBuilds: 6, mostDuties: 1 });
  const plant = plantOf(enclosure);
  const builds = buildsOf(enclosure).filter((build) => assemble(plant, build).banks.length > 0);
  const variants = [builds[0], builds.at(-1)].map((build = [], index) => ({
    name: index === 0 ? 'one' : 'other',
    enclosure,
    build,
    stack: [],
    needs: '',
  }));
  return { enclosure, variants };
}

function comparedPair(seed: number): Comparison {
  const { enclosure, variants } = randomPair(seed);
  return compare(variants, { place: enclosure.places.findIndex(({ kind }) => kind === 'bank') });
}

const DRAWS = 80;

/** What is told of a pair, and shares of draws in which it is so. */
interface Played {
  readonly told: number;
  readonly share: number;
}

/** Another route: the data of the enclosure are changed as they may be off, alike for both, and solved anew. */
function playedPair(seed: number, way: Way): { quieter: Played; holding: readonly Played[]; inside: number } {
  const { enclosure, variants } = randomPair(seed);
  const { against, variants: told } = comparedPair(seed);
  const [duty] = enclosure.duties;
  const stated = variants.map(({ build }, index) => {
    const ratios = told[index]?.[way]?.ratios;
    const found = duty && ratios ? statedAt(enclosure, build, duty, Float64Array.from(ratios)) : null;
    if (!found) throw new Error('no solution as stated');
    return found;
  });
  const random = seeded(500 + seed);
  const truths: (readonly Truth[])[] = [];
  for (let count = 0; count < DRAWS; count++) {
    const draw = newDraw(random);
    const both = stated.map((each) => truthOf(each, draw)).filter((truth) => truth !== null);
    if (both.length === 2) truths.push(both);
  }
  const share = (holds: (both: readonly Truth[]) => boolean): number =>
    truths.filter(holds).length / truths.length;
  const other = 1 - against;
  const energy = (both: readonly Truth[], index: number): number => both[index]?.energy ?? Number.NaN;
  const { low, high } = told[other]?.sure[way]?.level ?? { low: 0, high: 0 };
  return {
    quieter: {
      told: told[other]?.sure[way]?.quieter?.probability ?? Number.NaN,
      share: share((both) => energy(both, other) < energy(both, against)),
    },
    holding: told.map(({ sure }, index) => ({
      told: sure[way]?.holding ?? Number.NaN,
      share: share((both) => both[index]?.margins.every((margin) => margin >= 0) ?? false),
    })),
    inside: share((both) => {
      const level = 10 * Math.log10(energy(both, other));
      return level >= low && level <= high;
    }),
  };
}

describe('how sure a comparison is', () => {
  // Source: propagation of distributions, JCGM 101; computed with the ordinary solver on changed data.
  const played = [4, 18, 24, 27].flatMap((seed) => [
    playedPair(seed, 'full'),
    playedPair(seed, 'equalMargin'),
  ]);
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;

  it('is how often one is quieter when data are off as they may be', () => {
    const off = played.map(({ quieter }) => quieter.told - quieter.share);
    // Three and a half standard deviations of a share of so many draws, at most.
    for (const one of off) expect(Math.abs(one)).toBeLessThan(3.5 * Math.sqrt(0.25 / DRAWS));
    // On the whole it leans to neither side: found by running, with room; no source.
    expect(Math.abs(mean(off))).toBeLessThan(0.05);
    // None of the pairs is all the same: there is something to be right about.
    expect(new Set(played.map(({ quieter }) => Math.round(10 * quieter.told))).size).toBeGreaterThan(3);
  });

  it('is how often all limits hold', () => {
    const off = played.flatMap(({ holding }) => holding.map(({ told, share }) => told - share));
    for (const one of off) expect(Math.abs(one)).toBeLessThan(3.5 * Math.sqrt(0.25 / DRAWS));
    expect(Math.abs(mean(off))).toBeLessThan(0.05);
  });

  it('is told by bands that hold nine truths of ten', () => {
    // 90 %, as near as bands are asked to come.
    const inside = mean(played.map((each) => each.inside));
    expect(inside).toBeGreaterThan(0.85);
    expect(inside).toBeLessThan(0.95);
  });

  it('makes up one from both sides', () => {
    // Derived: one of two is the quieter.
    const { variants, enclosure } = randomPair(24);
    const { variants: told } = comparedPair(24);
    const [duty] = enclosure.duties;
    if (!duty) throw new RangeError('no duty');
    const responses = variants.map((variant, index) =>
      responder(variant, duty)(told[index]?.equalMargin ?? null),
    );
    const [, other] = surenessOf(responses, 0);
    const [one] = surenessOf(responses, 1);
    const sum = (other?.quieter?.probability ?? 0) + (one?.quieter?.probability ?? 0);
    expect(sum).toBeCloseTo(1, 12);
    expect([other?.quieter?.standing, one?.quieter?.standing].toSorted()).toEqual([
      'no-real-difference',
      'no-real-difference',
    ]);
  });
});

/** 90 % half-width of a rating [dB], and its standard deviation by the 95 % quantile of any table of the normal curve. */
const RATING = 5;
const SIGMA = RATING / 1.6449;

/** Nothing but ratings is off, and nothing else makes noise. Invented. */
const BOX = `title: Two fans of one curve
site: { room: 20 °C }
listener: { distance: 1 m }
heat: [{ part: lamp, power: 200 W, in: box, limit: 33 °C }]
airway:
  chambers: [box]
  legs:
    - { leg: in, from: outside, to: box, through: [load, front] }
    - { leg: out, from: box, to: outside, through: [way] }
elements:
  load: { given: loss, a: 0.000001 Pa s/m³, b: 75000 Pa s²/m⁶ }
  front: { bank: fans, face: 80 mm, depth: 25 mm }
  way: { passage: 5000 x 5000 mm }
choices: { front: { fans: [plain] } }
uncertainty: { rating: { plain: ${RATING} dB, louder: ${RATING} dB } }
assume:
  sound:
    fan-floor: -150
    installation-cap: 0
    stall: { rise: 0, uncertainty: 0 }
    working-point: [{ flow-share: 0, rise: 0, uncertainty: 0 }, { flow-share: 1, rise: 0, uncertainty: 0 }]
`;

const fans = (louder: number): string => `family: alike
provenance: invented
fans:
${['plain', 'louder']
  .map(
    (fan) => `  - fan: ${fan}
    size: 80 mm
    depth: 25 mm
    speed: 2000 rpm
    hold: 20 %
    curve: { flow: 0 0.01 0.02 m³/s, pressure: 30 15 0 Pa }
    noise: [{ level: ${fan === 'plain' ? 25 : 25 + louder} dB(A), distance: 1 m }]
    power: 0.001 W
`,
  )
  .join('')}`;

/** The comparison of a fan with one that is so many decibels louder; or with itself. */
function comparedFans(louder: number, level?: number): Comparison {
  const enclosure = readBoth(BOX.replace('[plain]', '[plain, louder]'), fans(louder));
  const place = enclosure.places.findIndex(({ kind }) => kind === 'bank');
  const options = enclosure.places[place];
  const models = options?.kind === 'bank' ? options.options.flatMap((bank) => (bank ? [bank.fan] : [])) : [];
  const one = models.find(({ id }) => id === 'plain');
  const other = models.find(({ id }) => id === 'louder');
  if (!one || !other) throw new Error('there are no fans');
  const build = enclosure.places.map(() => 0);
  return compare(fanVariants({ enclosure, build }, place, [one, louder === 0 ? one : other], 1), {
    place,
    level,
  });
}

const standings = ({ variants }: Comparison, way: Way) =>
  variants.map(({ sure }) => sure[way]?.quieter?.standing);

describe('two fans that differ in their ratings alone', () => {
  /** Of the difference of two fans of unlike models, 0.3 of whose variances is common [dB]. Derived. */
  const spread = SIGMA * Math.sqrt(2 * (1 - 0.3));

  // Quantiles of the standard normal distribution at 0.7 and 0.9. Source: any table of it.
  it.each([
    [0.97 * 0.5244, 0.6945, 'no-real-difference'],
    [1.03 * 0.5244, 0.7054, 'probably-louder'],
    [0.97 * 1.2816, 0.8931, 'probably-louder'],
    [1.03 * 1.2816, 0.9066, 'clearly-louder'],
  ])('by %f standard deviations', (deviations, probability, standing) => {
    // Probabilities of those: Φ(0.5087), Φ(0.5401), Φ(1.2432) and Φ(1.3200), computed with Python's statistics.NormalDist.
    const comparison = comparedFans(deviations * spread);
    expect(comparison.against).toBe(0);
    expect(standings(comparison, 'full')).toEqual([undefined, standing]);
    expect(1 - (comparison.variants[1]?.sure.full?.quieter?.probability ?? 0)).toBeCloseTo(probability, 3);
    expect(standings(comparison, 'equalLevel')).toEqual([undefined, undefined]);
    // Both are a little too warm at full speed, and so they are equally warm there.
    expect(standings(comparison, 'equalMargin')).toEqual([undefined, standing]);
  });

  it('have bands as wide as all that may be off about a level', () => {
    // Root of squares of rating, mounting in a panel (2 dB) and the way out of the box (3 dB), one standard deviation.
    const { level } = comparedFans(3).variants[0]?.sure.full ?? {};
    const half = 1.6449 * Math.hypot(SIGMA, 2, 3);
    expect((level?.high ?? 0) - (level?.expected ?? 0)).toBeCloseTo(half, 2);
    expect((level?.expected ?? 0) - (level?.low ?? 0)).toBeCloseTo(half, 2);
  });

  it('or not at all are not really different', () => {
    const comparison = comparedFans(0);
    for (const way of WAYS) {
      expect(standings(comparison, way)).toEqual([
        undefined,
        way === 'equalLevel' ? undefined : 'no-real-difference',
      ]);
    }
    expect(comparison.variants[1]?.sure.full?.quieter?.probability).toBe(0.5);
  });

  it('are held against the quietest at full speed where none can have the level', () => {
    const comparison = comparedFans(3, 90);
    expect(comparison.best).toBe(-1);
    expect(comparison.against).toBe(0);
    expect(comparison.variants.map(({ sure }) => sure.equalLevel)).toEqual([null, null]);
    expect(standings(comparison, 'full')).toEqual([undefined, 'probably-louder']);
  });
});

describe('a comparison as text', () => {
  const text = (comparison: Comparison, width?: number): string =>
    compareView('box', comparison, { paint: plain, ...(width === undefined ? {} : { width }) });

  it.each([60, 80, 100])('tells with each row how sure it is, on %i columns', (width) => {
    const lines = text(comparedFans(3), width).split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
    const rows = lines.filter((line) => /^ {2}\d+ to \d+ dB\(A\), limits hold: .*%/.test(line));
    expect(rows).toHaveLength(6);
    expect(rows.filter((line) => line.endsWith(', probably louder (80 %)'))).toHaveLength(2);
  });

  it('has a last column of it where that fits', () => {
    expect(text(comparedFans(3), 125)).toMatch(
      /^louder x1 +100 .* dB\(A\), limits hold: .* %, probably louder \(80 %\)$/m,
    );
  });

  it.each([
    [
      1,
      /^Equally warm, -0\.\d K in hand, there is no real difference in noise to louder x1: quieter with 61 %\.$/m,
    ],
    [3, /^Equally warm, -0\.\d K in hand, it is probably quieter than louder x1 \(80 %\)\.$/m],
    [8, /^Equally warm, -0\.\d K in hand, it is clearly quieter than louder x1 \(99 %\)\.$/m],
    [30, /^Equally warm, -0\.\d K in hand, it is clearly quieter than louder x1 \(more than 99 %\)\.$/m],
  ])('says so of the best in a sentence, %i dB', (louder, sentence) => {
    // Φ of these over 3.597 dB: 0.6095, 0.7979, 0.9869, 1; computed with Python's statistics.NormalDist.
    const told = text(comparedFans(louder));
    expect(told).toContain('At equal noise plain x1 keeps the box coolest');
    expect(told).toMatch(sentence);
  });

  it('says so where there is no solution', () => {
    const { variants, ...rest } = comparedFans(3);
    const lost = variants.map((variant) => ({
      ...variant,
      sure: { full: null, equalLevel: null, equalMargin: null },
    }));
    const told = text({ ...rest, variants: lost });
    expect(told.match(/no solution: no band and no probability$/gm)).toHaveLength(6);
    expect(told).toContain('nothing can be said of the noise of plain x1 and louder x1: no solution.');
    expect(surenessOf([null, null], 0)).toEqual([null, null]);
  });
});

describe('a comparison as data', () => {
  it('has bands and probabilities of each way, null where there is nothing to say', () => {
    const comparison = comparedFans(3);
    const meta = { version: '0', command: 'compare', warnings: [] };
    const { result } = JSON.parse(JSON.stringify(compareDocument('box', comparison, meta)));
    expect(result).toMatchObject({ best: 'plain x1', against: 'plain x1' });
    const [plainFan, louder] = result.variants;
    expect(plainFan.full.sure.quieter).toBeNull();
    expect(louder.equalLevel.sure.quieter).toBeNull();
    // Φ(3 dB / 3.597 dB) = 0.7979, as above.
    expect(louder.full.sure.quieter.probability).toBeCloseTo(1 - 0.7979, 3);
    expect(louder.full.sure.quieter.standing).toBe('probably-louder');
    const { low, expected, high } = louder.full.sure.level_dBA;
    expect(expected).toBeCloseTo(louder.full.level_dBA, 4);
    expect(high - expected).toBeCloseTo(1.6449 * Math.hypot(SIGMA, 2, 3), 2);
    expect(expected - low).toBeCloseTo(high - expected, 2);
    // A margin a little below none is held a little less often than not.
    expect(louder.full.sure.holding).toBeGreaterThan(0.25);
    expect(louder.full.sure.holding).toBeLessThan(0.5);
    const none = JSON.parse(JSON.stringify(compareDocument('box', comparedFans(3, 90), meta))).result;
    expect(none).toMatchObject({ best: null, against: 'plain x1' });
    expect(none.variants[0].equalLevel).toBeNull();
  });
});
