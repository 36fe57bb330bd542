import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchAllowance, declarationAllowance } from '../../src/sound/declaration.ts';
import { sumLevels } from '../../src/sound/levels.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import {
  neededDifference,
  probabilityQuieter,
  sumBias,
  sumUncertainty,
  verdict,
} from '../../src/sound/uncertainty.ts';

const SEED = 77;
const three = [
  { level: 30, uncertainty: 2 },
  { level: 27, uncertainty: 2 },
  { level: 24, uncertainty: 3 },
];
const pair = [
  { level: 30, uncertainty: 2 },
  { level: 30, uncertainty: 2 },
];

describe('uncertainty of a sum', () => {
  // Computed with NumPy: √(w u R u w).
  it.each([
    { rho: 0, uncertainty: 1.3471 },
    { rho: 1, uncertainty: 2.1433 },
    { rho: 0.5, uncertainty: 1.7901 },
  ])('of three sources, correlation $rho, is $uncertainty dB', ({ rho, uncertainty }) => {
    expect(Math.abs(sumUncertainty(three, () => rho) - uncertainty)).toBeLessThan(1e-3);
  });

  it('of two equal fans', () => {
    expect(sumUncertainty(pair, () => 0)).toBeCloseTo(Math.SQRT2, 10); // derived: 2/√2
    expect(sumUncertainty(pair, () => 1)).toBeCloseTo(2, 10); // derived
  });

  it('asks for the correlation of each two terms by their places', () => {
    // Computed with NumPy: correlation 0.8 between the first two, none with the third.
    const rho = (one: number, other: number) => (one + other === 1 ? 0.8 : 0);
    expect(sumUncertainty(three, rho)).toBeCloseTo(1.6909, 3);
  });

  it('is that of the loudest when the rest is silent, and nothing in silence', () => {
    const silent = { level: Number.NEGATIVE_INFINITY, uncertainty: 9 };
    expect(sumUncertainty([{ level: 20, uncertainty: 2 }, silent], () => 0)).toBe(2);
    expect(sumUncertainty([silent, silent], () => 0)).toBe(0);
  });

  it('never exceeds the largest', () => {
    const term = fc.record({
      level: fc.double({ min: 0, max: 60, noNaN: true }),
      uncertainty: fc.double({ min: 0, max: 6, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(term, { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (terms, rho) => {
          const most = Math.max(...terms.map((one) => one.uncertainty));
          expect(sumUncertainty(terms, () => rho)).toBeLessThanOrEqual(most + 1e-9);
        },
      ),
      { seed: SEED },
    );
  });

  it('is the slope of the sum', () => {
    // Derived: a shift of one source by its own uncertainty, small, moves the sum by its share of it.
    const [first] = three;
    const step = 1e-5;
    const levels = three.map((term) => term.level);
    const moved = [30 + step, 27, 24];
    const slope = (sumLevels(moved) - sumLevels(levels)) / step;
    const alone = three.map((term) => ({ ...term, uncertainty: term === first ? 1 : 0 }));
    expect(sumUncertainty(alone, () => 0)).toBeCloseTo(slope, 5);
  });

  it('biases the mean', () => {
    // Computed with NumPy; a Monte Carlo of two million draws gave 0.331 and 0.221.
    expect(sumBias(three)).toBeCloseTo(0.3341, 4);
    expect(sumBias(pair)).toBeCloseTo(0.2303, 4);
    expect(sumBias([{ level: 20, uncertainty: 3 }])).toBe(0);
  });
});

describe('which is quieter', () => {
  const at = (level: number, uncertainty: number) => ({ level, uncertainty });

  it('has the probability of the normal difference', () => {
    // Computed with SciPy 1.17 stats.norm.
    expect(Math.abs(probabilityQuieter(at(28, 2.5), at(30, 2.5), 0) - 0.7142)).toBeLessThan(1e-3);
    expect(Math.abs(probabilityQuieter(at(28, 2.5), at(30, 2.5), 0.6) - 0.8145)).toBeLessThan(1e-3);
    expect(Math.abs(probabilityQuieter(at(27, 2), at(30, 2), 0) - 0.8556)).toBeLessThan(1e-3);
    // Exceeding a limit of 30 dB: the limit has no uncertainty.
    expect(Math.abs(probabilityQuieter(at(30, 0), at(28, 2.5), 0) - 0.2119)).toBeLessThan(1e-3);
  });

  it('is certain without uncertainty, even between equals', () => {
    expect(probabilityQuieter(at(28, 0), at(30, 0), 0)).toBe(1);
    expect(probabilityQuieter(at(30, 2), at(28, 2), 1)).toBe(0);
    expect(probabilityQuieter(at(28, 2), at(28, 2), 1)).toBe(0.5);
  });

  it('sums to 1 over both orders', () => {
    const term = fc.record({
      level: fc.double({ min: 10, max: 50, noNaN: true }),
      uncertainty: fc.double({ min: 0, max: 6, noNaN: true }),
    });
    fc.assert(
      fc.property(term, term, fc.double({ min: -1, max: 1, noNaN: true }), (one, other, rho) => {
        expect(probabilityQuieter(one, other, rho) + probabilityQuieter(other, one, rho)).toBeCloseTo(1, 12);
      }),
      { seed: SEED },
    );
  });

  it('needs a difference', () => {
    // Computed with SciPy 1.17: z · √(2.5² + 2.5²).
    expect(neededDifference(0.9, 2.5, 2.5, 0)).toBeCloseTo(4.531, 3);
    expect(neededDifference(0.95, 2.5, 2.5, 0)).toBeCloseTo(5.815, 3);
  });

  // Model assumption, no source.
  it.each([
    [0.9, 'clearly-quieter'],
    [0.899, 'probably-quieter'],
    [0.7, 'probably-quieter'],
    [0.699, 'no-real-difference'],
    [0.1, 'no-real-difference'],
  ])('%d is %s', (probability, code) => {
    expect(verdict(probability, SOUND_ASSUMPTIONS)).toBe(code);
  });
});

describe('declared values', () => {
  it('allow for reproducibility and production', () => {
    // Published: phonometry, declaration.py, ISO 4871, 1.645 σ; digits computed.
    expect(declarationAllowance(1.5)).toBeCloseTo(2.4675, 4);
    expect(declarationAllowance(1.5, 1)).toBeCloseTo(2.9656, 4);
  });

  it('allow for a batch', () => {
    expect(batchAllowance(1.8, 2)).toBeCloseTo(2.838, 4); // ISO 7574-4 (from memory); computed
  });
});
