import { describe, expect, it } from 'vitest';
import { plain } from '../../src/presentation/paint.ts';
import { solveView } from '../../src/presentation/solve-view.ts';
import { atSpeed, changed, dutyAt, readBoth } from './two-fans.ts';

/** Invented: full speed 1800 rpm, seven blades. */
const FANS = `family: tones
provenance: invented
fans:
  - fan: t92
    size: 92 mm
    depth: 25 mm
    speed: 1800 rpm
    hold: 20 %
    curve: { flow: 0 40 80 m³/h, pressure: 30 20 0 Pa }
    noise: [{ level: 30 dB(A), speed: 1800 rpm, distance: 1 m }]
    power: 0.001 W
    blades: 7
`;

/** Two banks of one fan side by side, each in a leg of its own, far from everything. Invented. */
const SIDE_BY_SIDE = `title: Two fans in two legs
site: { room: 25 °C }
listener: { distance: 1 m }
heat: [{ part: lamp, power: 0.001 W, in: box, limit: { air: 60 °C } }]
airway:
  chambers: [box]
  legs:
    - { leg: one, from: outside, to: box, through: [left] }
    - { leg: two, from: outside, to: box, through: [right] }
    - { leg: out, from: box, to: outside, through: [vent] }
elements:
  left: { bank: fans, face: 92 mm, depth: 25 mm }
  right: { bank: fans, face: 92 mm, depth: 25 mm }
  vent: { given: loss, K: 2.5, area: 100 cm² }
choices:
  left: { fans: [t92], count: 1 }
  right: { fans: [t92], count: 1 }
`;

/** The same two fans in one leg, a gap between them. Invented. */
const IN_SERIES = changed(SIDE_BY_SIDE, {
  '    - { leg: one, from: outside, to: box, through: [left] }\n': '',
  'leg: two, from: outside, to: box, through: [right]':
    'leg: one, from: outside, to: box, through: [left, right]',
});

type Changes = Readonly<Record<string, string>>;
const SLOWER = 1740 / 1800;

function tones(scenario: string, changes: Changes, catalog: string, ...speeds: readonly number[]) {
  return dutyAt(readBoth(changed(scenario, changes), catalog), ...speeds).sound.tones;
}

describe('tones of a solved build', () => {
  it('pass blades', () => {
    // Published: phonometry, hvac.py, B N/60: seven blades at 1800 rpm make 210 Hz.
    const { banks } = tones(SIDE_BY_SIDE, {}, FANS, 1, SLOWER);
    expect(banks.map(({ place, bladePass }) => [place, bladePass])).toEqual([
      ['left', expect.closeTo(210, 9)],
      ['right', expect.closeTo(203, 9)],
    ]);
  });

  it('are unknown without the number of blades', () => {
    const { banks, beats } = tones(SIDE_BY_SIDE, {}, changed(FANS, { '    blades: 7\n': '' }), 1);
    expect(banks.map((bank) => 'bladePass' in bank)).toEqual([false, false]);
    expect(beats).toEqual([]);
  });

  it('of a bank at rest are none', () => {
    const { banks, beats } = tones(SIDE_BY_SIDE, {}, FANS, 1, 0);
    expect(banks.map(({ place }) => place)).toEqual(['left']);
    expect(beats).toEqual([]);
  });
});

describe('beats', () => {
  it('of 1800 and 1740 rpm are 7 Hz, and more as fans differ', () => {
    // Computed with Python: 7·60/60; 10 % of 210 Hz more at most, none at least as 7 Hz lie within 3 to 10 %.
    const { beats } = tones(SIDE_BY_SIDE, {}, FANS, 1, SLOWER);
    expect(beats).toHaveLength(1);
    expect(beats[0]?.nominal).toBeCloseTo(7, 9);
    expect(beats[0]?.expected).toEqual({ from: 0, to: expect.closeTo(28, 9) });
  });

  it('inside a bank are 3 to 10 % of the tone', () => {
    // Model assumption from memory: speeds of equal fans differ by 3 to 10 %. 6.3 to 21 Hz of 210 Hz.
    const changes = { 'left: { fans: [t92], count: 1 }': 'left: { fans: [t92], count: 3 }' };
    const [inside] = tones(SIDE_BY_SIDE, changes, FANS, 1, 0).beats;
    expect(inside?.places).toEqual(['left', 'left']);
    expect([inside?.expected.from, inside?.expected.to]).toEqual([
      expect.closeTo(6.3, 9),
      expect.closeTo(21, 9),
    ]);
    expect(inside?.peak).toBeCloseTo(6.0206, 4); // derived: 20 lg 2
    expect(inside?.swing).toBeUndefined();
  });

  it('of tones 3 dB apart swing by 15.34 dB, the louder told first', () => {
    // Computed with Python: 20 lg((1 + a)/(1 - a)), a = 10^(-3/20).
    const changes = {
      'right: { bank: fans, face: 92 mm': 'right: { bank: fans, directivity: 3 dB, face: 92 mm',
    };
    const [beat] = tones(SIDE_BY_SIDE, changes, FANS, 1).beats;
    expect(beat?.places).toEqual(['right', 'left']);
    expect(beat?.swing).toBeCloseTo(15.3402, 3);
    expect(beat?.peak).toBeCloseTo(4.6494, 3); // computed with Python: 20 lg(1 + a)
  });

  it('are not told of fans whose speeds are held, or far apart', () => {
    // Derived: locked within 0.1 % at one speed the beat is below 0.5 Hz; 210 and 105 Hz beat at 84 Hz at least.
    const held = 'assume: { sound: { tone-risk: { speed-difference: { from: 0, to: 0.001 } } } }\n';
    const locked = `${SIDE_BY_SIDE}${held}`;
    expect(tones(locked, {}, FANS, 1).beats).toEqual([]);
    expect(tones(locked, {}, FANS, 1, SLOWER).beats.map(({ nominal }) => nominal)).toEqual([
      expect.closeTo(7, 9),
    ]);
    expect(tones(SIDE_BY_SIDE, {}, FANS, 1, 0.5).beats).toEqual([]);
    expect(tones(SIDE_BY_SIDE, {}, FANS, 1).beats).toHaveLength(1);
  });

  it('are told of equal fans within 3 % of one speed, however fast their tones are', () => {
    // Derived: seven blades at 12 000 rpm sound at 1400 Hz. Told one speed, real fans of 3 to 10 % difference beat at 42 to
    // 140 Hz: too fast for fluctuation, but a pair to tell of. At 80 % of it they are 280 Hz apart, and no pair.
    const fast = FANS.replaceAll('1800 rpm', '12000 rpm');
    const [beat] = tones(SIDE_BY_SIDE, {}, fast, 1).beats;
    expect(beat && [beat.expected.from, beat.expected.to]).toEqual([
      expect.closeTo(42, 6),
      expect.closeTo(140, 6),
    ]);
    expect(beat?.runApart).toBeGreaterThan(0);
    expect(tones(SIDE_BY_SIDE, {}, fast, 1, 0.975).beats).toHaveLength(1);
    expect(tones(SIDE_BY_SIDE, {}, fast, 1, 0.8).beats).toEqual([]);
  });

  it('come with numbers of revolutions against them', () => {
    // Computed with Python: lock 60·0.3/7 = 2.571 rpm; critical band at 210 Hz (ECMA-418-1) 103.165 Hz, so 884.27 rpm
    // apart, out of 915.7 to 2684.3 rpm; (210 ± 103.165)/29 blades.
    const [beat] = tones(SIDE_BY_SIDE, {}, FANS, 1, SLOWER).beats;
    if (!beat) throw new Error('the fans beat');
    expect(beat.lockAt * 60).toBeCloseTo(1800, 9);
    expect(beat.lockWithin * 60).toBeCloseTo(2.5714, 4);
    expect(beat.runApart * 60).toBeCloseTo(884.27, 2);
    expect([beat.avoid.from * 60, beat.avoid.to * 60]).toEqual([
      expect.closeTo(915.73, 2),
      expect.closeTo(2684.27, 2),
    ]);
    expect(beat.blades).toEqual({ most: 3, least: 11 });
    const text = solveView(atSpeed(readBoth(SIDE_BY_SIDE, FANS), 1, SLOWER), { paint: plain });
    expect(text).toContain('Hold right within 2.6 rpm of 1800 rpm, keep it out of 910 to 2690 rpm');
  });
});

describe('tone risk', () => {
  // Model assumption, no source: one point a circumstance, medium from 2, high from 3.
  const pointsOf = (scenario: string, changes: Changes, catalog = FANS, ...speeds: readonly number[]) =>
    tones(scenario, changes, catalog, ...speeds).banks.map(({ points }) => points);
  const alone = [1, 0] as const;

  it('counts the blade-pass frequency', () => {
    expect(pointsOf(SIDE_BY_SIDE, {}, FANS, ...alone)).toEqual([1]); // 210 Hz
    expect(pointsOf(SIDE_BY_SIDE, {}, FANS, 0.7, 0)).toEqual([0]); // 147 Hz
  });

  it('counts beats of both banks', () => {
    expect(pointsOf(SIDE_BY_SIDE, {}, FANS, 1, SLOWER)).toEqual([2, 2]);
  });

  it('counts what stands within a quarter of the fan size on the inlet', () => {
    const wired = (gap: string): Changes => ({
      'through: [left]': 'through: [wire, left]',
      'elements:\n': 'elements:\n  wire: { guard: 92 x 92 mm, open: 80 % }\n',
      'left: { bank: fans, face: 92 mm': `left: { bank: fans, inlet-gap: ${gap}, face: 92 mm`,
    });
    expect(pointsOf(SIDE_BY_SIDE, wired('23 mm'), FANS, ...alone)).toEqual([2]);
    expect(pointsOf(SIDE_BY_SIDE, wired('24 mm'), FANS, ...alone)).toEqual([1]);
  });

  it('counts a flow share below 40 %', () => {
    // Blade pass, beat and load.
    expect(pointsOf(SIDE_BY_SIDE, { '100 cm²': '6 cm²' }, FANS, 1)).toEqual([3, 3]);
  });

  it('counts fans in series that touch, and on the inlet of the second the first', () => {
    const apart = (gap: string): Changes => ({
      'right: { bank: fans, face: 92 mm': `right: { bank: fans, inlet-gap: ${gap}, face: 92 mm`,
      'left: { bank: fans, face: 92 mm': `left: { bank: fans, outlet-gap: ${gap}, face: 92 mm`,
    });
    // Blade pass and beat 2; touching within 5 % of 92 mm; within 25 % for the inlet of the second.
    expect(pointsOf(IN_SERIES, apart('4 mm'), FANS, 1)).toEqual([3, 4]);
    expect(pointsOf(IN_SERIES, apart('6 mm'), FANS, 1)).toEqual([2, 3]);
    expect(pointsOf(IN_SERIES, apart('30 mm'), FANS, 1)).toEqual([2, 2]);
  });

  it('counts as many struts as blades', () => {
    const struts = (count: number) => changed(FANS, { 'blades: 7': `blades: 7\n    struts: ${count}` });
    expect(pointsOf(SIDE_BY_SIDE, {}, struts(7), ...alone)).toEqual([2]);
    expect(pointsOf(SIDE_BY_SIDE, {}, struts(4), ...alone)).toEqual([1]);
  });

  it('of the whole is that of the worst bank', () => {
    expect(tones(SIDE_BY_SIDE, {}, FANS, 0.7, 0).risk).toBe('low');
    expect(tones(SIDE_BY_SIDE, {}, FANS, 1, SLOWER).risk).toBe('medium');
  });

  it('lets a sound be masked only further below the background', () => {
    // Model assumption, no source: 10 dB without, 14 dB with tones.
    const audibilityIn = (background: number, ...speeds: readonly number[]) => {
      const listener = { 'distance: 1 m': `distance: 1 m, background: ${background} dB(A)` };
      const duty = dutyAt(readBoth(changed(SIDE_BY_SIDE, listener), FANS), ...speeds);
      return { below: background - duty.level, audibility: duty.sound.against?.audibility };
    };
    const level = dutyAt(readBoth(SIDE_BY_SIDE, FANS), 1, SLOWER).level;
    expect(audibilityIn(Math.round(level) + 12, 1, SLOWER).audibility).toBe('borderline');
    expect(audibilityIn(Math.round(level) + 15, 1, SLOWER).audibility).toBe('masked');
    const still = dutyAt(readBoth(SIDE_BY_SIDE, FANS), 0.7, 0).level;
    expect(audibilityIn(Math.round(still) + 12, 0.7, 0).audibility).toBe('masked');
  });
});
