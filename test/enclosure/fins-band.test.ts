import { describe, expect, it } from 'vitest';
import { elementFrom } from '../airway/element-pool.ts';
import { dressed, outcomeOf, partOf } from './dressed.ts';
import { type Drawing, elementPlace, fans, fanWith, lossOfForm } from './hand-made.ts';

const SINGLE = {
  sink: 'single',
  face: '92 x 92 mm',
  R: '0.4 K/W',
  at: '1 m/s',
  a: '300 Pa s/m³',
  b: '1e4 Pa s²/m⁶',
};

/** A box whose fins are known by one point, at so much loss that some flow results. */
function box(written: Record<string, unknown>, loss: number): Drawing {
  const sink = elementPlace(elementFrom('sink', written), 'sink');
  return {
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [fans(fanWith()), elementPlace(lossOfForm(0, loss)), sink] },
      { from: 1, to: 0, through: [] },
    ],
    parts: [
      { power: 30, on: sink },
      { power: 2, in: 1 },
    ],
  };
}

/** The fins of the only part on them, and the velocity before them over that of the point. */
function finsOf(written: Record<string, unknown>, loss: number) {
  const outcome = outcomeOf(dressed(box(written, loss), {}));
  const fins = partOf(outcome, 0).fins;
  if (!fins) throw new RangeError('the part sits on fins');
  expect(partOf(outcome, 1)).not.toHaveProperty('fins');
  const flow = outcome.legs[0]?.massFlow ?? Number.NaN;
  return { fins, times: flow / 1.2 / 0.092 ** 2, flow };
}

describe('fins known by one point', () => {
  it.each([1e4, 1e5, 1e6])('have a band by what is not known of their exponent, at a loss of %d', (loss) => {
    // Derived: R = 0.4·(U/U₀)^−m with m 0.5 ± 0.15, written out for the two ends.
    const { fins, times } = finsOf(SINGLE, loss);
    const ends = [0.35, 0.65].map((exponent) => 0.4 * times ** -exponent);
    expect(fins.place).toBe('sink');
    expect(fins.resistance / (0.4 * times ** -0.5)).toBeCloseTo(1, 9);
    expect((fins.band?.low ?? Number.NaN) / Math.min(...ends)).toBeCloseTo(1, 9);
    expect((fins.band?.high ?? Number.NaN) / Math.max(...ends)).toBeCloseTo(1, 9);
  });

  it('have none below what the heat balance of the air allows', () => {
    // Derived: R ≥ 1/(ṁ·cp).
    const { fins, flow } = finsOf({ ...SINGLE, R: '0.02 K/W' }, 1e6);
    const least = 1 / (flow * 1006);
    expect(fins.resistance / least).toBeCloseTo(1, 6);
    expect((fins.band?.low ?? Number.NaN) / least).toBeCloseTo(1, 6);
    expect(fins.band?.high).toBeGreaterThan(fins.resistance);
  });

  it('have no band of their own if a curve was measured', () => {
    const curve = { ...SINGLE, sink: 'curve', R: '0.1 K/W', c: '0.3 K/W', m: 0.8 };
    expect(finsOf(curve, 1e5).fins).not.toHaveProperty('band');
  });
});

describe('a part that no air reaches', () => {
  it('is said to be one', () => {
    // No source: what the program promises, words instead of a sentinel.
    const drawing = box(SINGLE, 1e5);
    const machine = dressed(
      {
        ...drawing,
        inner: 2,
        legs: [...drawing.legs, { from: 1, to: 2, through: [elementPlace(lossOfForm(1e3, 1e5))] }],
        parts: [...(drawing.parts ?? []), { power: 5, in: 2 }],
      },
      {},
    );
    const { remarks } = outcomeOf(machine);
    expect(remarks).toContain('part 2: hardly any air reaches it, nothing carries its heat off');
    expect(remarks.filter((remark) => /hardly any air/.test(remark))).toHaveLength(1);
  });
});
