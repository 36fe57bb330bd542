import { describe, expect, it } from 'vitest';
import type { Band } from '../../src/bands/band.ts';
import { buildBands } from '../../src/bands/build-bands.ts';
import { HALF_WIDTH } from '../../src/bands/doubt.ts';
import { responseOf } from '../../src/bands/response.ts';
import { levelOf } from '../../src/sound/levels.ts';
import { seeded } from '../search/random.ts';
import { type Case, randomCases } from './random-cases.ts';
import { newDraw, type Truth, truthOf } from './truth.ts';

// Truths are drawn from the stated distributions by changing the data of the enclosure and solving it anew (truth.ts):
// another route than the sensitivities of the bands. Source: propagation of distributions, JCGM 101.

const BUILDS = 50;
const DRAWS = 12;

/** A result: its band and the truths, one a draw. */
interface Result {
  readonly what: 'level' | 'margin' | 'temperature';
  readonly band: Band;
  readonly truths: number[];
}

interface Played {
  readonly results: readonly Result[];
  /** Share of draws in which all limits hold, and what was said [-]. */
  readonly held: number;
  readonly holding: number;
}

function resultsFor({ stated }: Case): { readonly results: readonly Result[]; readonly holding: number } {
  const response = responseOf(
    (stated[0] as Case['stated'][number]).machine,
    stated.map(({ ratios }) => ratios),
  );
  if (typeof response === 'string') throw new Error(response);
  const bands = buildBands(response);
  const results: Result[] = [{ what: 'level', band: bands.level, truths: [] }];
  for (const { margins, parts } of bands.duties) {
    for (const { margin } of margins) results.push({ what: 'margin', band: margin, truths: [] });
    for (const { temperature } of parts) results.push({ what: 'temperature', band: temperature, truths: [] });
  }
  return { results, holding: bands.holding };
}

function play(one: Case, seed: number): Played {
  const { enclosure, stated } = one;
  const { results, holding } = resultsFor(one);
  const random = seeded(1000 + seed);
  let held = 0;
  let played = 0;
  for (let count = 0; count < DRAWS; count++) {
    const draw = newDraw(random);
    const truths = stated.map((each) => truthOf(each, draw));
    if (!truths.every((truth): truth is Truth => truth !== null)) continue;
    played += 1;
    const shares = enclosure.duties.map(({ share }) => share);
    const energy = truths.reduce((sum, truth, duty) => sum + (shares[duty] ?? 0) * truth.energy, 0);
    const values = [
      levelOf(energy),
      ...truths.flatMap(({ margins, temperatures }) => [...margins, ...temperatures]),
    ];
    values.forEach((value, index) => {
      results[index]?.truths.push(value);
    });
    if (truths.every(({ margins }) => margins.every((margin) => margin >= 0))) held += 1;
  }
  return { results, held: held / played, holding };
}

const played = randomCases(BUILDS).map(play);

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const deviation = (values: readonly number[]): number =>
  Math.sqrt(mean(values.map((value) => (value - mean(values)) ** 2)) * (values.length / (values.length - 1)));

describe.each(['level', 'margin', 'temperature'] as const)('the band of a %s', (what) => {
  const results = played.flatMap((one) => one.results.filter((result) => result.what === what));
  const share = (holds: (band: Band, truth: number) => boolean): number =>
    mean(results.map(({ band, truths }) => mean(truths.map((truth) => Number(holds(band, truth))))));

  it('holds 85 to 95 % of the truths', () => {
    const inside = share(({ low, high }, truth) => truth >= low && truth <= high);
    expect(inside).toBeGreaterThan(0.85);
    expect(inside).toBeLessThan(0.95);
  });

  it('has as many truths below as above', () => {
    // ± 3 %: temperatures curve upwards, which single steps see in part only.
    expect(Math.abs(share(({ low }, truth) => truth < low) - 0.05)).toBeLessThan(0.03);
    expect(Math.abs(share(({ high }, truth) => truth > high) - 0.05)).toBeLessThan(0.03);
  });

  it('is as wide as truths are scattered', () => {
    // A tenth: found by running, with room; no source.
    const ratios = results
      .map(({ band, truths }) => (band.high - band.low) / (2 * HALF_WIDTH * deviation(truths)))
      .toSorted((one, other) => one - other);
    expect(Math.abs((ratios[ratios.length >> 1] ?? 0) - 1)).toBeLessThan(0.1);
  });
});

describe('the probability of holding all limits', () => {
  it('is the share of truths that hold them', () => {
    const off = played.map(({ held, holding }) => holding - held);
    expect(Math.abs(mean(off))).toBeLessThan(0.03);
    // Four standard deviations of a share of 12 draws, at most.
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.5);
  });
});
