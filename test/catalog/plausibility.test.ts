import { describe, expect, it } from 'vitest';
import { characterOf, freeDelivery, fullSpeedLevel, greatestAirPower, shutOff } from './fan-character.ts';
import { implausible } from './plausible-bounds.ts';
import { familyOf, shippedFamilies, type WrittenFan } from './written-fan.ts';

const families = shippedFamilies();
const fans = families.flatMap((family) => family.fans);

/** Fans by line: a line's fans differ in speed only. */
const lines = [...new Set(fans.map((fan) => fan.line))].map((line) => ({
  line,
  members: fans.filter((fan) => fan.line === line),
}));

describe('the shipped catalog', () => {
  it('says in every file that it is invented', () => {
    for (const { text, provenance, family, file } of families) {
      expect(text.startsWith("# Every figure in this file is invented: no maker's data.\n"), file).toBe(true);
      expect(provenance, file).toBe('invented');
      expect(family).toBeTypeOf('string');
    }
  });

  it('has at least 165 fans, each with an id of its own that tells its frame', () => {
    expect(fans.length).toBeGreaterThanOrEqual(165);
    expect(new Set(fans.map((fan) => fan.id)).size).toBe(fans.length);
    for (const { id, size, depth } of fans) {
      expect(id).toMatch(new RegExp(`^[bdfpqsw]${size}-${depth}-[a-h]$`));
    }
  });

  it('spans the frames people buy', () => {
    const spread = (of: (fan: WrittenFan) => number) => [...new Set(fans.map(of))].sort((a, b) => a - b);
    expect(spread((fan) => fan.size)).toEqual([40, 50, 60, 70, 80, 92, 120, 140]);
    expect(spread((fan) => fan.depth)).toEqual([10, 15, 20, 25, 26, 28, 32, 38]);
  });

  it.each(['60x15', '80x15', '80x25', '92x15', '92x25', '120x15', '120x25'])(
    'gives a search at least eight fans of frame %s',
    (frame) => {
      expect(fans.filter((fan) => `${fan.size}x${fan.depth}` === frame).length).toBeGreaterThanOrEqual(8);
    },
  );

  it('has some fans with box figures only', () => {
    const boxed = fans.filter((fan) => fan.boxOnly);
    expect(boxed.length).toBeGreaterThanOrEqual(8);
    expect(boxed.length).toBeLessThan(fans.length / 8);
  });

  it('has no two fans with the same figures', () => {
    const figures = fans.map(({ id: _, line: __, ...rest }) => JSON.stringify(rest));
    expect(new Set(figures).size).toBe(fans.length);
  });

  it('stays small enough to be read at every start', () => {
    const bytes = families.reduce((sum, { text }) => sum + Buffer.byteLength(text), 0);
    expect(bytes).toBeLessThan(110_000);
  });

  it.each(fans.map((fan) => ({ id: fan.id, fan })))('has a plausible $id', ({ fan }) => {
    expect(implausible(fan)).toEqual([]);
  });
});

describe('fans of one line', () => {
  // Derived: by the affinity laws Q ~ n, p ~ n², P ~ n³ and L ~ 55 lg n, so all rise with speed.
  it.each(lines)('rise with speed in all figures: $line', ({ members }) => {
    const bySpeed = [...members].sort((a, b) => a.speed - b.speed);
    for (const of of [freeDelivery, shutOff, fullSpeedLevel, (fan: WrittenFan) => fan.power]) {
      const values = bySpeed.map(of);
      expect(values.every((value, i) => i === 0 || value > (values[i - 1] ?? Number.NaN))).toBe(true);
    }
    expect(bySpeed.map((fan) => fan.id)).toEqual(members.map((fan) => fan.id).sort());
  });

  // Derived: fans that differ in speed alone have one flow and one pressure coefficient; 6 % for rounding
  // and low Reynolds number (common practice, no source).
  it.each(lines)('share their coefficients: $line', ({ members }) => {
    for (const of of ['flowCoefficient', 'pressureCoefficient'] as const) {
      const values = members.map((fan) => characterOf(fan)[of]);
      expect(Math.max(...values) / Math.min(...values)).toBeLessThan(1.06);
    }
  });
});

describe('the checks', () => {
  const written = (changes: Record<string, string>) => {
    const figures = {
      flow: '0 6 11 20 26.5 33.5 46.5 53 m³/h',
      pressure: '18.2 15.5 13.2 10.3 11.1 9.5 3.6 0 Pa',
      level: '25.4 dB(A)',
      power: '0.55 W',
      ...changes,
    };
    const text = `fans:
  - fan: f92-25-x
    size: 92 mm
    depth: 25 mm
    speed: 2000 rpm
    hold: 25 %
    start: 32 %
    curve: { flow: ${figures.flow}, pressure: ${figures.pressure} }
    noise:
      - { level: ${figures.level}, speed: 2000 rpm, distance: 1 m }
    power: ${figures.power}
    price: 9
    blades: 7
`;
    return familyOf('in memory', text).fans.flatMap(implausible);
  };

  it('accept the fan that the broken ones are made from', () => {
    expect(written({})).toEqual([]);
  });

  it.each([
    ['twice the flow', { flow: '0 12 22 40 53 67 93 106 m³/h', power: '1.1 W' }, /^flow coefficient/],
    ['half the pressure', { pressure: '9.1 7.7 6.6 5.1 5.5 4.7 1.8 0 Pa' }, /^pressure coefficient/],
    ['no stall dip', { pressure: '18.2 15.5 13.2 11.1 10.3 9.5 3.6 0 Pa' }, /^number of rises/],
    ['a dip too deep', { pressure: '18.2 15.5 13.2 9.4 11.1 9.5 3.6 0 Pa' }, /^rise behind the dip/],
    ['too little noise', { level: '15.4 dB(A)' }, /^noise constant/],
    ['too little power', { power: '0.1 W' }, /^efficiency/],
  ])('refuse a fan with %s', (_what, changes, fault) => {
    expect(written(changes)).toEqual([expect.stringMatching(fault)]);
  });

  it('refuse a figure without its unit', () => {
    expect(() => written({ power: '0.55' })).toThrow('figures in W wanted, found 0.55');
  });

  // Derived: x(1 - x/2 - x²/2) is greatest where 1 - x - 3x²/2 = 0, at x = (√7 - 1)/3: 0.315565.
  it('find the greatest air power of a box fan', () => {
    const boxed = fans.filter((fan) => fan.boxOnly);
    expect(boxed).not.toEqual([]);
    for (const fan of boxed) {
      expect(greatestAirPower(fan) / (freeDelivery(fan) * shutOff(fan))).toBeCloseTo(0.315565, 4);
    }
  });
});
