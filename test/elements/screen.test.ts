import { describe, expect, it } from 'vitest';
import { meshOpenShare, screen, screenLoss } from '../../src/elements/screen.ts';
import { wireFactor } from '../../src/elements/wire-reynolds.ts';
import { lossOf, off, problemsOf } from './loss-of.ts';

describe('a wire screen in turbulent flow', () => {
  it('has the loss of the handbook', () => {
    // From memory: Idelchik, 3rd ed., diagram 8-6, 1.3(1-φ) + (1/φ-1)²; a public code has (1-φ)² instead.
    const open = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8];
    const heads = [6.35444, 3.03, 1.65, 0.964444, 0.573673, 0.3225];
    open.forEach((share, index) => {
      expect(off(screenLoss(share), heads[index] ?? 0)).toBeLessThan(1e-6);
    });
    expect(off(screenLoss(0.5), 1.3 * 0.5 + 0.5 ** 2)).toBeGreaterThan(0.5);
  });

  it('agrees with another table within its uncertainty at all Reynolds numbers', () => {
    // Published: library fluids 1.0.22, round_edge_screen at φ 0.5 (its docstring: 2.1 at Re 100), after Blevins.
    const blevins = { 20: 3.9, 30: 3.3, 40: 2.85, 60: 2.49, 80: 2.25, 100: 2.1, 200: 1.8, 400: 1.56 };
    for (const [reynolds, heads] of Object.entries(blevins)) {
      expect(off(screenLoss(0.5) * wireFactor(Number(reynolds)).factor, heads)).toBeLessThan(0.2);
    }
  });
});

describe('the factor for low Reynolds numbers', () => {
  it('meets its table and joins the creeping branch', () => {
    // From memory: Idelchik, 3rd ed., diagram 8-6.
    const table = { 50: 1.44, 100: 1.24, 150: 1.13, 200: 1.08, 300: 1.03, 400: 1, 5000: 1 };
    for (const [reynolds, factor] of Object.entries(table)) {
      expect(wireFactor(Number(reynolds)).factor).toBeCloseTo(factor, 12);
    }
    expect(wireFactor(10).factor).toBeCloseTo(1 + 22 / 10, 12);
    expect(wireFactor(50 * (1 + 1e-12)).slope).toBeCloseTo(wireFactor(50).slope, 9);
  });

  it('is the shape-preserving cubic between the nodes', () => {
    // Computed with SciPy 1.17 PchipInterpolator over 50 to 400; the first and last piece have other end slopes here.
    const pchip = { 120: 1.18744129, 175: 1.10073317, 250: 1.05103365 };
    for (const [reynolds, factor] of Object.entries(pchip)) {
      expect(off(wireFactor(Number(reynolds)).factor, factor)).toBeLessThan(1e-6);
    }
  });

  it('falls all the way', () => {
    for (let reynolds = 1; reynolds < 399; reynolds++) {
      expect(wireFactor(reynolds + 1).factor).toBeLessThan(wireFactor(reynolds).factor);
    }
  });
});

describe('a screen as an element', () => {
  const mesh = { screen: '95 x 95 mm', open: '50 %', wire: '0.2 mm' };

  it('loses its heads of the velocity before it', () => {
    // Derived: 40 m/s make Re 530 on the wire, so k = 1 and Δp = 1.65·1.2·1600/2.
    expect(off(lossOf(screen.make(mesh), 40 * 0.095 ** 2), 1584)).toBeLessThan(1e-9);
  });

  it('creeps in proportion to viscosity below Re 50', () => {
    // Derived: K·(V² + 22·ν·V/d)·ρ/2 at 1 m/s, Re 13.26.
    const expected = (1.65 * (1 + (22 * (1.81e-5 / 1.2)) / 0.0002) * 1.2) / 2;
    expect(off(lossOf(screen.make(mesh), 0.095 ** 2), expected)).toBeLessThan(1e-9);
  });

  it('may be given by its pitch', () => {
    // Derived: (1 - d/pitch)²; 16 wires of 0.28 mm to the inch, 40 of 0.2 mm.
    expect(off(meshOpenShare(0.28, 25.4 / 16), 0.678353)).toBeLessThan(1e-5);
    expect(off(meshOpenShare(0.2, 25.4 / 40), 0.469279)).toBeLessThan(1e-5);
    const woven = screen.make({ screen: '95 x 95 mm', pitch: '0.635 mm', wire: '0.2 mm' });
    expect(off((woven.freeArea ?? 0) / 0.095 ** 2, 0.469279)).toBeLessThan(1e-5);
  });

  it('refuses both or neither of open and pitch, and wires that touch', () => {
    expect(problemsOf(screen, { ...mesh, pitch: '0.6 mm' }).join()).toContain('either open');
    expect(problemsOf(screen, { screen: '95 mm', wire: '0.2 mm' }).join()).toContain('either open');
    expect(problemsOf(screen, { screen: '95 mm', wire: '0.2 mm', pitch: '0.2 mm' }).join()).toMatch(
      /^pitch: /,
    );
    expect(problemsOf(screen, { ...mesh, open: '100 %' }).join()).toMatch(/^open: /);
    expect(screen.make({ ...mesh, open: '90 %' }).remarks).toHaveLength(1);
    expect(screen.make(mesh).remarks).toEqual([]);
  });
});
