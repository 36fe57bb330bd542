import { describe, expect, it } from 'vitest';
import { fingerDistance } from '../../src/elements/finger-distance.ts';
import type { HoleShape } from '../../src/elements/hole-shape.ts';

const distance = (shape: HoleShape, millimetres: number) =>
  fingerDistance({ shape, size: millimetres / 1000, length: (4 * millimetres) / 1000 });

describe('the distance that keeps fingers from blades', () => {
  it('is that of ISO 13857, table 4', () => {
    // Published: ISO 13857 table 4, age 14 and over, as reprinted by a maker of safety fences.
    expect(distance('round', 8)).toBe(0.005);
    expect(distance('slot', 8)).toBe(0.02);
    expect(distance('square', 8)).toBe(0.015);
    expect(distance('round', 4)).toBe(0.002);
    expect(distance('slot', 6)).toBe(0.01);
    expect(distance('slot', 6.1)).toBe(0.02);
    expect(distance('round', 12)).toBe(0.08);
    expect(distance('round', 20)).toBe(0.12);
  });

  it('is unknown where a hand passes', () => {
    expect(distance('round', 20.1)).toBeUndefined();
    expect(distance('hexagon', 21)).toBeUndefined();
  });

  it('treats a hexagon as the round hole about it or the slot of its width, whichever asks less', () => {
    // Derived: 6 mm across flats is 6.93 mm across corners: round 5 mm, slot 10 mm.
    expect(distance('hexagon', 6)).toBe(0.005);
    // 8 mm across flats is 9.24 mm across corners: round 20 mm, slot 20 mm.
    expect(distance('hexagon', 8)).toBe(0.02);
    // 18 mm across flats is 20.8 mm across corners: no round hole of the table, slot 120 mm.
    expect(distance('hexagon', 18)).toBe(0.12);
  });

  it('never shrinks as the opening grows', () => {
    for (const shape of ['round', 'square', 'slot', 'hexagon'] as const) {
      for (let size = 1; size < 20; size += 0.25) {
        expect(distance(shape, size) ?? 1).toBeLessThanOrEqual(distance(shape, size + 0.25) ?? 1);
      }
    }
  });
});
