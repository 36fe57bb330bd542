import { describe, expect, it } from 'vitest';
import { duct } from '../../src/elements/duct.ts';
import { churchillFriction } from '../../src/elements/duct-friction.ts';
import { rectangularFriction } from '../../src/elements/laminar-friction.ts';
import { lossOf, off, problemsOf } from './loss-of.ts';

/** f·Re of developed laminar flow by the exact series, Darcy. Source: Shah & London (1978). */
function exactFriction(aspect: number): number {
  let sum = 0;
  for (let n = 1; n < 400; n += 2) sum += Math.tanh((n * Math.PI) / (2 * aspect)) / n ** 5;
  return 96 / ((1 + aspect) ** 2 * (1 - ((192 * aspect) / Math.PI ** 5) * sum));
}

describe('developed laminar friction in a rectangle', () => {
  it('is that of the exact series', () => {
    for (let aspect = 0.02; aspect <= 1; aspect += 0.02) {
      expect(off(rectangularFriction(aspect), exactFriction(aspect))).toBeLessThan(1e-3);
    }
    // Computed from the series with Python.
    expect(off(rectangularFriction(0.25), 72.9311)).toBeLessThan(1e-3);
    expect(rectangularFriction(0)).toBe(96);
  });

  it('has the Fanning values known from fin stacks', () => {
    // Published: transcriptions of Culham & Muzychka (2001), 24 - 32.527λ + 46.721λ² - ..., a quarter of Darcy's.
    expect(off(rectangularFriction(0.112308) / 4, 20.8819)).toBeLessThan(1e-4);
    expect(off(rectangularFriction(1) / 4, 14.2296)).toBeLessThan(1e-4);
  });

  it('gives the loss of a slot far from its entry', () => {
    // Derived: 20 x 5 x 50 mm, 1e-4 m³/s, Re 530.387, developed: 0.515681 Pa. Here a slot 20 000 times as long.
    const element = duct.make({ duct: '20 x 5 mm', length: '1 km' });
    expect(off(lossOf(element, 1e-4) / 20_000, 0.515681)).toBeLessThan(1e-3);
  });
});

describe('a short laminar channel', () => {
  it('loses more while its profile develops', () => {
    // Derived from the composite form: 2 x 30 mm, 100 mm, 2 m/s: developed 11.3407 Pa, with entrance 13.6785 Pa.
    const element = duct.make({ duct: '30 x 2 mm', length: '100 mm' });
    expect(off(lossOf(element, 2 * 60e-6), 13.6785)).toBeLessThan(1e-3);
    const developed = (rectangularFriction(2 / 30) / 497.238) * (0.1 / 0.00375) * 0.6 * 4;
    expect(off(developed, 11.3407)).toBeLessThan(1e-4);
  });
});

describe('friction beyond laminar flow', () => {
  it('is that of Churchill', () => {
    // Computed with fluids 1.0.22, Churchill_1977, smooth pipe.
    const smooth = { 2000: 0.0320433, 3000: 0.0429747, 5000: 0.0378873, 10000: 0.0310021, 50000: 0.0207763 };
    for (const [text, factor] of Object.entries(smooth)) {
      const reynolds = Number(text);
      const found = churchillFriction(reynolds, { factor: 64 / reynolds, exponent: -1 });
      expect(off(found.factor, factor)).toBeLessThan(1e-5);
    }
  });

  it('uses the laminar-equivalent Reynolds number in a rectangle', () => {
    // Derived: 100 x 50 mm, 0.01 m³/s, Re 8839.78, developed: 0.343781 Pa over 0.3 m. Here a duct 10 000 times as long.
    const element = duct.make({ duct: '100 x 50 mm', length: '3 km' });
    expect(off(lossOf(element, 0.01) / 10_000, 0.343781)).toBeLessThan(1e-3);
  });
});

describe('the ends of a duct', () => {
  const heads = (fields: object) =>
    duct.make({ duct: '100 x 50 mm', length: '300 mm', ...fields }).inertial * 2 * 0.005 ** 2;

  it('lose what the handbook says, and nothing unless asked for', () => {
    // From memory: Idelchik diagrams 3-1 and 3-4; a free end loses the whole velocity head.
    expect(heads({})).toBe(0);
    expect(heads({ exit: 'free' })).toBeCloseTo(1, 12);
    expect(heads({ entry: 'sharp' })).toBeCloseTo(0.5, 12);
    expect(heads({ entry: 'projecting', exit: 'free' })).toBeCloseTo(2, 12);
    expect(heads({ entry: 'rounded' })).toBeCloseTo(0.03, 12);
    expect(problemsOf(duct, { duct: '100 x 50 mm', length: '300 mm', exit: 'open' }).join()).toContain(
      'exit',
    );
  });
});
