import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import type { BankOutcome } from '../../src/enclosure/outcome.ts';
import { curveFromPoints } from '../../src/fan/curve.ts';
import { curveShape } from '../../src/fan/curve-shape.ts';
import { stallDrawing } from '../../src/presentation/stall-drawing.ts';

/** Invented points with a dip of stall, its last peak at 18 L/s. */
const dipped = curveFromPoints({
  flows: [0, 0.005, 0.01, 0.015, 0.018, 0.022, 0.026, 0.03],
  pressures: [40, 33, 25, 22, 24, 21, 12, 0],
});

/** The same with a deep dip. */
const deep = curveFromPoints({
  flows: [0, 0.005, 0.01, 0.013, 0.018, 0.022, 0.03],
  pressures: [40, 30, 14, 12, 28, 21, 0],
});

/** One fan at full speed in standard air. */
function stalledAt(flow: number, curve = dipped): BankOutcome {
  const shape = curveShape(curve, flow, 1, 1);
  return {
    place: 'push',
    fan: 'invented',
    count: 1,
    ratio: 1,
    speed: 25,
    flow,
    pressureRise: shape.working.counted,
    flowShare: flow / 0.03,
    power: 1,
    stalled: true,
    shape,
    overdriven: false,
    backflow: flow < 0,
    synthesisedCurve: false,
  };
}

/** Column and row of the only place at which a character stands. */
function placeOf(lines: readonly string[], character: string): { column: number; row: number } {
  const row = lines.findIndex((line) => line.includes(character));
  const line = lines[row];
  if (line === undefined) throw new RangeError(`no ${character} is drawn`);
  expect(line.indexOf(character)).toBe(line.lastIndexOf(character));
  return { column: line.indexOf(character), row };
}

describe('the drawing of a stalled fan', () => {
  it('shows the working point and the flat piece that is counted on', () => {
    const lines = stallDrawing(stalledAt(0.0165), 100);
    const field = lines.slice(2, -4);
    expect(field[placeOf(field, '●').row]).toMatch(/●.*-/);
    expect(lines[0]).toMatch(
      /^push \(invented\) on its curve at this speed: 59\.4 m³\/h, 22\.\d Pa; last peak, dotted, at 64\.8 m³\/h$/,
    );
    expect(lines.at(-1)).toMatch(/counted on.*works here/);
    expect(lines.at(-1)).not.toMatch(/by the points/);
  });

  it('shows above it what the points give, where that is a line higher or more', () => {
    // By the points some 25 Pa at 16.5 L/s, between 12 and 28 Pa; counted on is the running minimum of 12 Pa.
    const lines = stallDrawing(stalledAt(0.0165, deep), 100);
    const field = lines.slice(2, -4);
    const works = placeOf(field, '●');
    const given = placeOf(field, '○');
    expect(given.column).toBe(works.column);
    expect(given.row).toBeLessThan(works.row - 2);
    expect(lines.at(-1)).toMatch(/by the points/);
  });

  it('stands where its axes say', () => {
    // Derived: 0 to 108 m³/h across; the working point at 59.4 of them lies at 55 % of the field.
    const lines = stallDrawing(stalledAt(0.0165), 100);
    const field = lines.slice(2, -4);
    const rule = lines.find((line) => line.includes('└')) ?? '';
    const start = rule.indexOf('└') + 1;
    const share = (placeOf(field, '●').column - start) / (rule.length - start - 1);
    expect(share).toBeCloseTo(0.55, 1);
  });

  it('reaches into reversed flow', () => {
    const lines = stallDrawing(stalledAt(-0.004), 100);
    expect(lines.join('\n')).toMatch(/-1\d|-20/);
    expect(lines.join('\n')).toContain('●');
  });

  it.each([60, 72, 80, 100, 200])('fits into %d columns', (width) => {
    for (const line of stallDrawing(stalledAt(0.0165), width)) {
      expect(stringWidth(line)).toBeLessThanOrEqual(Math.min(100, width));
    }
  });

  it('is not there for a fan that does not run stalled', () => {
    const { shape: _, ...bank } = stalledAt(0.025);
    expect(stallDrawing({ ...bank, stalled: false }, 100)).toEqual([]);
  });
});

describe('the shape of a curve at a speed', () => {
  it('has the points as given, scaled by the fan laws', () => {
    // Fan laws: pressure ~ speed² and density, flow ~ speed (ISO 5801, from memory).
    const { points, peakFlow } = curveShape(dipped, 0.008, 0.5, 1.1);
    const given = points.find(({ flow }) => Math.abs(flow - 0.009) < 1e-12);
    expect(given?.raw).toBeCloseTo(24 * 0.25 * 1.1, 9);
    expect(given?.counted).toBeLessThan(22.1 * 0.25 * 1.1);
    expect(peakFlow).toBeCloseTo(0.009, 12);
  });

  it('counts on no more than the points give, at each of them', () => {
    // Definition of the lower envelope. Its level piece is tilted by the least slope, 2.5e-4 of shut-off over free delivery.
    const { points } = curveShape(dipped, 0.0165, 1, 1);
    for (const knot of dipped.raw.flows) {
      const point = points.find(({ flow }) => Math.abs(flow - knot) < 1e-12);
      expect(point?.counted).toBeLessThanOrEqual((point?.raw ?? Number.NaN) + 2.5e-4 * 40);
    }
  });
});
