import { describe, expect, it } from 'vitest';
import { plain } from '../../src/presentation/paint.ts';
import { solveView } from '../../src/presentation/solve-view.ts';
import { atSpeed, changed, dutyAt, readBoth, TWO_FANS } from './two-fans.ts';

/** Invented: as the fan of the two, but with a rating of 40 dB(A), which leaves its floor far below. */
const LOUD = `family: loud
provenance: invented
fans:
  - fan: e92
    size: 92 mm
    depth: 25 mm
    speed: 2000 rpm
    hold: 30 %
    curve: { flow: 0 34.8 82.9 m³/h, pressure: 30 22.2 0 Pa }
    noise: [{ level: 40 dB(A), speed: 2000 rpm, distance: 1 m }]
    power: 0.001 W
`;

const WARM = changed(TWO_FANS, {
  'power: 0.001 W': 'power: 60 W',
  // No floor to speak of, so that the level follows the speed law alone.
  'panel-mounting: 0': 'panel-mounting: 0, fan-floor: -60',
});

/** The same, with nothing to hear of the vent. */
const FANS_ONLY = changed(WARM, { ', vent: 50.2654825 cm²': '' });

const marginAt = (scenario: string, speed: number) =>
  dutyAt(readBoth(scenario, LOUD), speed).tightest?.margin ?? Number.NaN;

describe('what a decibel costs in kelvin', () => {
  it('is the margin lost and gained when all fans turn slower and faster', () => {
    // Derived: with 55 dB a decade and no floor, 1 dB is a factor of 10^(1/55) on the speed. The flow share stays as it
    // is, since all losses go with the square of the flow.
    const cost = dutyAt(readBoth(FANS_ONLY, LOUD), 0.65).sound.decibelCost;
    const base = marginAt(FANS_ONLY, 0.65);
    const factor = 10 ** (1 / 55);
    expect(cost?.quieter).toBeGreaterThan(0.1);
    expect(Math.abs((cost?.quieter ?? 0) - (base - marginAt(FANS_ONLY, 0.65 / factor)))).toBeLessThan(0.01);
    expect(Math.abs((cost?.louder ?? 0) - (marginAt(FANS_ONLY, 0.65 * factor) - base))).toBeLessThan(0.01);
  });

  it('counts vents as well, which grow louder faster', () => {
    // Both are heard; the level is changed by 1 dB exactly, checked at the speed that the cost belongs to.
    const duty = (speed: number) => dutyAt(readBoth(WARM, LOUD), speed);
    const base = duty(0.65);
    const lost = base.sound.decibelCost?.quieter ?? Number.NaN;
    let low = 0.5;
    let high = 0.65;
    for (let count = 0; count < 40; count++) {
      const middle = (low + high) / 2;
      if (duty(middle).level > base.level - 1) high = middle;
      else low = middle;
    }
    const there = (base.tightest?.margin ?? 0) - (duty(low).tightest?.margin ?? 0);
    expect(Math.abs(lost - there)).toBeLessThan(0.01);
  });

  it('knows where there is nothing to be had', () => {
    const at = (speed: number) => dutyAt(readBoth(WARM, LOUD), speed).sound.decibelCost;
    expect(at(1)?.louder).toBeUndefined();
    expect(at(1)?.quieter).toBeGreaterThan(0);
    expect(at(0.3)?.quieter).toBeUndefined();
    expect(at(0.3)?.louder).toBeGreaterThan(0);
    // Half a decibel above the hold floor there is no whole one.
    expect(at(0.3 * 10 ** (0.5 / 55))?.quieter).toBeUndefined();
  });

  it('keeps banks out of their bands to avoid, the others going on', () => {
    // Two banks side by side, the second held at 65 % by a band above and below it: as if it had that speed for good.
    const two = changed(FANS_ONLY, {
      '    - { leg: out': '    - { leg: more, from: outside, to: box, through: [other] }\n    - { leg: out',
      'choices:\n': 'choices:\n  other: { fans: [e92], count: 1 }\n',
      '  vent:': '  other: { bank: fans, face: 92 mm, depth: 25 mm }\n  vent:',
    });
    const banded = (bands: string) =>
      changed(two, { 'depth: 25 mm }\n  vent': `depth: 25 mm, avoid: ${bands} }\n  vent` });
    const held = dutyAt(readBoth(banded('[[400 rpm, 1300 rpm], [1300 rpm, 2100 rpm]]'), LOUD), 0.65);
    const cost = held.sound.decibelCost;
    expect(cost?.heldByBands).toBe(true);
    // The other bank alone makes the level fall by 1 dB; found by bisection on told speeds.
    let [low, high] = [0.55, 0.65];
    const at = (speed: number) => dutyAt(readBoth(two, LOUD), speed, 0.65);
    for (let count = 0; count < 40; count++) {
      const middle = (low + high) / 2;
      if (at(middle).level > held.level - 1) high = middle;
      else low = middle;
    }
    const lost = (held.tightest?.margin ?? Number.NaN) - (at(low).tightest?.margin ?? Number.NaN);
    expect(Math.abs((cost?.quieter ?? Number.NaN) - lost)).toBeLessThan(0.01);
    // A band that lies far off changes nothing but the flag.
    const far = dutyAt(readBoth(banded('[[400 rpm, 650 rpm]]'), LOUD), 0.65).sound.decibelCost;
    const free = dutyAt(readBoth(two, LOUD), 0.65).sound.decibelCost;
    expect(free?.heldByBands).toBe(false);
    expect(far?.heldByBands).toBe(true);
    expect(far?.quieter).toBeCloseTo(free?.quieter ?? Number.NaN, 3);
    expect(far?.louder).toBeCloseTo(free?.louder ?? Number.NaN, 3);
  });

  it('is out of reach where bands to avoid hold every bank', () => {
    const held = changed(FANS_ONLY, {
      'inlet-gap: 10 mm }': 'inlet-gap: 10 mm, avoid: [[1000 rpm, 1300 rpm], [1310 rpm, 1900 rpm]] }',
    });
    expect(dutyAt(readBoth(held, LOUD), 0.65).sound.decibelCost).toBeUndefined();
    const below = changed(FANS_ONLY, {
      'inlet-gap: 10 mm }': 'inlet-gap: 10 mm, avoid: [[1000 rpm, 1300 rpm]] }',
    });
    const cost = dutyAt(readBoth(below, LOUD), 0.65).sound.decibelCost;
    expect(cost?.quieter).toBeUndefined();
    expect(cost?.louder).toBeGreaterThan(0);
    const text = solveView(atSpeed(readBoth(below, LOUD), 0.65), { paint: plain });
    expect(text).toContain('1 dB less is beyond the hold floors or a band to avoid, 1 dB more would gain');
  });

  it('is nothing without a limit or without sound', () => {
    expect(dutyAt(readBoth(WARM, LOUD), 0).sound.decibelCost).toBeUndefined();
    const free = changed(WARM, { ', limit: 60 °C': '' });
    expect(dutyAt(readBoth(free, LOUD), 0.65).sound.decibelCost).toBeUndefined();
  });
});
