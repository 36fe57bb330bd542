import { describe, expect, it } from 'vitest';
import {
  orificeCoefficients,
  orificeLoss,
  thicknessFactor,
  thinOrificeLoss,
} from '../../src/elements/thick-orifice.ts';
import { off, USUAL } from './loss-of.ts';

/** Loss in heads of the face velocity. */
const face = (heads: number, open: number) => heads / (open * open);

describe('thin sharp edges', () => {
  it('lose in a duct what the Modelica Standard Library computes', () => {
    // Published: Modelica.Fluid.Fittings, sharp edged orifice, after Idelchik diagram 4-14.
    const open = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];
    const expected = [52.5804, 19.3157, 8.75789, 4.36953, 2.25705, 1.14836, 0.537727];
    open.forEach((share, index) => {
      expect(off(face(thinOrificeLoss(share, share), share), expected[index] ?? 0)).toBeLessThan(1e-5);
    });
  });

  it('lose at an inlet what ThermoSysPro computes and at an outlet what two data-centre codes compute', () => {
    // Published: ThermoSysPro Diaphragm.mo, (1.707 - φ)²/φ².
    expect(off(face(thinOrificeLoss(0, 0.4), 0.4), 10.6766)).toBeLessThan(1e-5);
    expect(off(face(thinOrificeLoss(0, 0.6), 0.6), 3.40403)).toBeLessThan(1e-5);
    // Published: perforated tile loss [1 + 0.5(1-φ)^0.75 + 1.414(1-φ)^0.375]/φ², which rounds 0.707² to 0.5.
    expect(off(face(thinOrificeLoss(0.4, 0), 0.4), 15.6766)).toBeLessThan(1e-5);
    expect(off(face(thinOrificeLoss(0.5, 0), 0.5), 9.55022)).toBeLessThan(1e-5);
  });

  it('lose in a duct 13 to 15 % more than the older table of Blevins', () => {
    // Published: library fluids 1.0.22, square_edge_screen: 17, 7.7, 3.8, 2 at φ 0.3 to 0.6.
    const blevins = [17, 7.7, 3.8, 2];
    const ratios = [1.136, 1.137, 1.15, 1.129];
    blevins.forEach((heads, index) => {
      const share = 0.3 + 0.1 * index;
      expect(off(face(thinOrificeLoss(share, share), share) / heads, ratios[index] ?? 0)).toBeLessThan(1e-3);
    });
  });

  it('agree in a duct with measurements on perforated plates', () => {
    // Published: Flow Measurement and Instrumentation 43 (2015) 6, abstract, Eu = 0.67·φ^-2.24 with K = 2·Eu; mean
    // deviation 12 %.
    expect(off(face(thinOrificeLoss(0.3, 0.3), 0.3), 1.34 * 0.3 ** -2.24)).toBeLessThan(0.12);
  });

  it('are what a thick edge becomes', () => {
    // The two published forms differ by the rounding of 0.707 and by τ(0) = 1.35 against 1.414.
    expect(off(orificeLoss(0, 0, 0.0151), orificeLoss(0, 0, 0.0149))).toBeLessThan(0.03);
    expect(orificeLoss(0.3, 0.2, 0.0149)).toBe(thinOrificeLoss(0.3, 0.2));
  });
});

describe('the thickness factor', () => {
  it('has the values of its formula', () => {
    // Computed from the formula with Python.
    expect(off(thicknessFactor(0.2), 1.2371)).toBeLessThan(1e-3);
    expect(off(thicknessFactor(0.8), 0.405992)).toBeLessThan(1e-3);
    expect(off(thicknessFactor(2), 0.0191638)).toBeLessThan(1e-3);
    expect(thicknessFactor(2.4)).toBe(0);
    expect(thicknessFactor(7)).toBe(0);
  });

  it('follows the table of the handbook, which an exponent 8 in the denominator misses', () => {
    // From memory: Idelchik, 3rd ed., diagram 4-12.
    const thickness = [0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.6, 2, 2.4];
    const table = [1.35, 1.22, 1.1, 0.84, 0.42, 0.24, 0.16, 0.07, 0.02, 0];
    thickness.forEach((l, index) => {
      expect(Math.abs(thicknessFactor(l) - (table[index] ?? 0))).toBeLessThan(l === 0.6 ? 0.07 : 0.02);
    });
    const miscopied = (l: number) => (2.4 - l) * 10 ** -(0.25 + (0.535 * l ** 8) / (0.05 + l ** 8));
    for (const l of [0.8, 1.6, 2]) expect(Math.abs(miscopied(l) - thicknessFactor(l))).toBeGreaterThan(0.04);
  });
});

describe('a sharp edge of any thickness', () => {
  it('has the turbulent loss of the general formula', () => {
    // Derived: 0.5(1-fu)^0.75 + τ(1-fu)^0.375(1-fd) + (1-fd)² at φ 0.4, l 1/3.
    expect(off(orificeLoss(0.4, 0, 1 / 3), 2.29687)).toBeLessThan(1e-5);
    expect(off(face(orificeLoss(0.4, 0, 1 / 3), 0.4), 14.3555)).toBeLessThan(1e-5);
    expect(off(face(orificeLoss(0.4, 0.4, 1 / 3), 0.4), 7.96544)).toBeLessThan(1e-5);
    expect(off(face(orificeLoss(0, 0.4, 1 / 3), 0.4), 9.71696)).toBeLessThan(1e-5);
    expect(off(face(orificeLoss(0, 0, 1 / 3), 0.4), 16.6116)).toBeLessThan(1e-5);
  });

  it('has the discharge coefficient of a hole in a wall', () => {
    // Derived: Cd = K^-1/2; the known range of sharp edges is 0.60 to 0.61 (from memory, any fluid mechanics text).
    const discharge = (l: number) => orificeLoss(0, 0, l) ** -0.5;
    expect(off(discharge(0.2), 0.604445)).toBeLessThan(1e-5);
    expect(off(discharge(0.5), 0.634602)).toBeLessThan(1e-5);
    expect(off(discharge(1), 0.757324)).toBeLessThan(1e-5);
    expect(off(discharge(2), 0.81133)).toBeLessThan(1e-5);
    // From memory: Idelchik, diagram 4-17, 2.85 heads for a thin hole.
    expect(off(thinOrificeLoss(0, 0), 2.85)).toBeLessThan(0.03);
  });

  it('thick and in a duct loses no more than the momentum balance allows', () => {
    // Derived: contraction 0.5(1-φ) and expansion (1-φ)² give 2.0 heads at φ 0.5; a widely used library has 4.0.
    expect(off(face(orificeLoss(0.5, 0.5, 2.4), 0.5), 2)).toBeLessThan(0.1);
  });
});

describe('an orifice at low Reynolds numbers', () => {
  const holes = (upstreamShare: number, downstreamShare: number) =>
    orificeCoefficients({
      area: 0.4 * 0.01,
      hydraulicDiameter: 0.003,
      thickness: 0.001,
      laminarFriction: 64,
      upstreamShare,
      downstreamShare,
    });

  it('adds the creeping part to the turbulent one', () => {
    // Derived: d 3 mm, t 1 mm, φ 0.4, 1 m/s before the sheet, 12π + 64/3 over Re 497.238 in heads of the hole velocity.
    const inlet = holes(0, 0.4);
    expect(off(inlet.viscous * USUAL.viscosity, 44.5203)).toBeLessThan(1e-5);
    expect(off(inlet.inertial * USUAL.density, 58301.7)).toBeLessThan(1e-5);
    const pressure = inlet.viscous * USUAL.viscosity * 0.01 + inlet.inertial * USUAL.density * 1e-4;
    expect(off(pressure, 6.27538)).toBeLessThan(1e-5);
    expect(off(pressure / 0.6, 10.459)).toBeLessThan(1e-5);
  });

  it('has the exact loss of creeping flow through a thin round hole', () => {
    // From memory: Sampson (1891), Δp = 3·µ·Q/r³.
    const creeping = orificeCoefficients({
      area: (Math.PI / 4) * 0.003 ** 2,
      hydraulicDiameter: 0.003,
      thickness: 0,
      laminarFriction: 64,
      upstreamShare: 0,
      downstreamShare: 0,
    });
    expect(off(creeping.viscous * USUAL.viscosity * 1e-9, 1.60889e-5)).toBeLessThan(1e-5);
  });

  it('is close to creeping flow through a thin slit, too', () => {
    // From memory: Hasimoto (1958), Δp = 32·µ·Q/(π·w²·length) for a slit of width w.
    const [width, length] = [0.001, 0.1];
    const slit = orificeCoefficients({
      area: width * length,
      hydraulicDiameter: 2 * width,
      thickness: 0,
      laminarFriction: 96,
      upstreamShare: 0,
      downstreamShare: 0,
    });
    expect(off(slit.viscous, 32 / (Math.PI * width ** 2 * length))).toBeLessThan(0.08);
  });
});
