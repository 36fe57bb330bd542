import { describe, expect, it } from 'vitest';
import { compare } from '../../src/questions/compare/compare.ts';
import { arrangements } from '../../src/questions/compare/variants.ts';
import { hushwright, written } from '../commands/program.ts';
import { changed, readBoth } from '../scenarios/two-fans.ts';

/** Pressure at no flow [Pa] and flow at no pressure [m³/s] of the fan below. */
const SHUT_OFF = 30;
const FREE = 0.02;

/** A fan whose curve is a straight line, and one whose curve is a parabola. Invented. */
const FANS = `family: ideal fans
provenance: invented
fans:
  - fan: straight
    size: 80 mm
    depth: 15 mm
    speed: 2000 rpm
    hold: 20 %
    curve: { flow: 0 0.01 0.02 m³/s, pressure: 30 15 0 Pa }
    noise: [{ level: 25 dB(A), distance: 1 m }]
    power: 0.001 W
  - fan: parabola
    size: 80 mm
    depth: 25 mm
    speed: 2000 rpm
    hold: 20 %
    curve: { flow: ${Array.from({ length: 41 }, (_, index) => index * 0.0005).join(' ')} m³/s, pressure: ${Array.from({ length: 41 }, (_, index) => SHUT_OFF * (1 - (index / 40) ** 2)).join(' ')} Pa }
    noise: [{ level: 25 dB(A), distance: 1 m }]
    power: 0.001 W
`;

/**
 * Nothing but a square-law loss before two places for fans; the level falls with 50 lg of speed. k is that of the fan: the
 * slim one has half the pressure of the others.
 */
function box(k: number, fan: string, derating = 1): string {
  const shutOff = fan === 'slim' ? SHUT_OFF / 2 : SHUT_OFF;
  return `title: Two fans before a loss
site: { room: 20 °C }
listener: { distance: 1 m }
heat: [{ part: lamp, power: 0.001 W, in: box }]
airway:
  chambers: [box]
  legs:
    - { leg: in, from: outside, to: box, through: [load, first, second] }
    - { leg: out, from: box, to: outside, through: [way] }
elements:
  load: { given: loss, a: 0.000001 Pa s/m³, b: ${(k * shutOff) / FREE ** 2} Pa s²/m⁶ }
  first: { bank: fans, face: 80 mm, depth: 25 mm }
  second: { bank: fans, face: 80 mm, depth: 25 mm }
  way: { passage: 5000 x 5000 mm }
choices:
  first: { fans: [${fan}] }
  second: { fans: [${fan}], empty: allowed }
builds: { one: { second: empty } }
assume:
  sound:
    speed-exponent: 50
    fan-floor: -150
    panel-mounting: 0
    installation-cap: 0
    stall: { rise: 0 }
    working-point: [{ flow-share: 0, rise: 0, uncertainty: 0 }, { flow-share: 1, rise: 0, uncertainty: 0 }]
  fan: { derating-direct: ${derating} }
`;
}

const catalog = written('fans.yaml', FANS);

/** The comparison that the program makes of the box, by the functions it calls. */
function compared(scenario: string) {
  const enclosure = readBoth(scenario, FANS);
  const [build] = enclosure.builds;
  const place = enclosure.places.findIndex(({ id }) => id === 'first');
  const there = enclosure.places[place];
  const fan = there?.kind === 'bank' ? there.options[0]?.fan : undefined;
  if (!build || !fan) throw new Error('there is no fan to arrange');
  const result = compare(arrangements({ enclosure, build: build.options }, place, fan, undefined), { place });
  const flow = (name: string, how: 'full' | 'equalLevel'): number => {
    const found = result.variants.find((variant) => variant.name === name);
    const one = result.variants.find((variant) => variant.name === 'one');
    return (found?.[how]?.massFlow ?? Number.NaN) / (one?.[how]?.massFlow ?? Number.NaN);
  };
  return { result, variants: result.variants, flow };
}

/** Speed at which two of a fan are as loud as one: 50 lg r + 10 lg 2 = 0. */
const EQUAL = 10 ** (-Math.log10(2) / 5);

/**
 * Flow over free delivery of one, of two in line and of two side by side at a share r of full speed. Derived: the roots of
 * r² − r·q = k·q² for a straight line and of r² − q² = k·q² for a parabola, with twice the pressure or half the flow.
 */
const exact = {
  straight: {
    one: (k: number, r: number) => (r * (-1 + Math.sqrt(1 + 4 * k))) / (2 * k),
    'two in line': (k: number, r: number) => (r * (-1 + Math.sqrt(1 + 2 * k))) / k,
    'side by side': (k: number, r: number) => (r * (-0.5 + Math.sqrt(0.25 + 4 * k))) / (2 * k),
  },
  parabola: {
    one: (k: number, r: number) => r / Math.sqrt(1 + k),
    'two in line': (k: number, r: number) => r * Math.sqrt(2 / (2 + k)),
    'side by side': (k: number, r: number) => r / Math.sqrt(0.25 + k),
  },
} as const;

describe.each(['straight', 'parabola'] as const)('two of a fan with a %s curve', (fan) => {
  it.each([0.25, 1, 4, 16])('give the flows of theory at k = %s, within one percent', (k) => {
    const { variants, flow } = compared(box(k, fan));
    expect(Math.abs((variants[0]?.k ?? 0) / k - 1)).toBeLessThan(0.01);
    const { one, ...pairs } = exact[fan];
    for (const [name, law] of Object.entries(pairs)) {
      expect(Math.abs(flow(name, 'full') / (law(k, 1) / one(k, 1)) - 1)).toBeLessThan(0.01);
      expect(Math.abs(flow(name, 'equalLevel') / (law(k, EQUAL) / one(k, 1)) - 1)).toBeLessThan(0.01);
    }
    const pair = variants.find(({ name }) => name === 'two in line');
    // Two equal sources: 3.01 dB. At 87.1 % of their speed they are as loud as one.
    expect(pair?.full.level).toBeCloseTo(25 + 10 * Math.log10(2), 2);
    expect(pair?.equalLevel?.ratios[0]).toBeCloseTo(0.871, 3);
  });
});

describe('where the answer flips', () => {
  it.each(['straight', 'parabola'])('is k = 1.5 between two in line and two side by side, %s', (fan) => {
    // Derived: both pairs of laws above meet at k = 3/2, at any speed.
    const { result } = compared(box(1, fan));
    expect(result.variants[result.best]?.name).toBe('side by side');
    const flip = result.flips.find(({ harder }) => harder);
    expect(result.variants[flip?.then ?? -1]?.name).toBe('two in line');
    expect(Math.abs((flip?.k ?? 0) / 1.5 - 1)).toBeLessThan(0.01);
  });
});

describe('the second of two fans in line', () => {
  it('gives less once what the first does to it is counted', () => {
    const ideal = compared(box(4, 'straight')).flow('two in line', 'full');
    const real = compared(box(4, 'straight', 0.8)).flow('two in line', 'full');
    expect(real).toBeLessThan(0.99 * ideal);
    // Derived: with 1.8 times the pressure of one fan, 1.8 (1 − q) = 4 q².
    const derated = (-1.8 + Math.sqrt(1.8 ** 2 + 4 * 4 * 1.8)) / 8;
    expect(Math.abs(real / (derated / exact.straight.one(4, 1)) - 1)).toBeLessThan(0.01);
  });

  it('is told in one plain sentence by the program', () => {
    const file = written('box.yaml', box(4, 'straight'));
    const run = hushwright(['compare', file, '--build', 'one', '--catalog', catalog, '--no-shipped']);
    expect(run.code).toBe(0);
    // Two in line move 1.28 times the air of one, side by side 1.13 times: derived as above, at k = 4.
    const full = run.out.slice(run.out.indexOf('At full speed'), run.out.indexOf('Equally loud'));
    expect(full).toMatch(/^two in line +100 +28\.0 +\d+\.\d +1\.28/m);
    expect(full).toMatch(/^side by side +100 +28\.0 +\d+\.\d +1\.13/m);
    expect(run.out).toMatch(/At equal noise two in line moves the most air, .* on a way of k = 4\./);
    expect(run.out).toMatch(/Below k = 1\.5, .*side by side moves the most air\./);
  });
});

describe('two fans in line with nothing between', () => {
  it('are as good as two places drawn one behind the other', () => {
    // The same box with the second place taken away: the pair stands in a place of its own behind the first.
    const one = changed(box(4, 'straight', 0.8), {
      ', first, second]': ', first]',
      '  second: { bank: fans, face: 80 mm, depth: 25 mm }\n': '',
      '  second: { fans: [straight], empty: allowed }\n': '',
      'builds: { one: { second: empty } }': 'builds: { one: {} }',
    });
    const drawn = compared(box(4, 'straight', 0.8));
    const made = compared(one);
    expect(made.flow('two in line', 'full')).toBeCloseTo(drawn.flow('two in line', 'full'), 6);
    expect(made.result.variants.find(({ name }) => name === 'two in line')?.needs).toBe('15 mm more depth');
  });
});

/** A slim fan that moves much against little, and a thick one that moves less but against more. Invented. */
const SLIM_AND_THICK = `family: two depths
provenance: invented
fans:
  - { fan: slim, size: 80 mm, depth: 15 mm, speed: 2000 rpm, curve: { flow: 0 0.01 0.02 m³/s, pressure: 15 7.5 0 Pa }, noise: [{ level: 25 dB(A), distance: 1 m }], power: 0.001 W }
  - { fan: thick, size: 80 mm, depth: 25 mm, speed: 2000 rpm, curve: { flow: 0 0.0075 0.015 m³/s, pressure: 40 20 0 Pa }, noise: [{ level: 25 dB(A), distance: 1 m }], power: 0.001 W }
`;

describe('slim against thick', () => {
  const shelf = written('depths.yaml', SLIM_AND_THICK);
  /** Where both curves cross: 15 (1 − q/0.02) = 40 (1 − q/0.015). The loss there is the k of the slim one. Derived. */
  const crossing = 25 / (40 / 0.015 - 15 / 0.02);
  const flip = (15 * (1 - crossing / FREE)) / crossing ** 2 / (15 / FREE ** 2);

  it.each([
    ['an open way', 0.1, 'slim', 'Above'],
    ['a dense stack', 4, 'thick', 'Below'],
  ])('on %s: depths, the better one, and where the answer flips', (_, k, best, side) => {
    const file = written('box.yaml', box(k, 'slim'));
    const args = ['--fan', 'slim', '--fan', 'thick', '--bank', 'first', '--catalog', shelf, '--no-shipped'];
    const run = hushwright(['compare', file, '--build', 'one', ...args]);
    expect(run.code).toBe(0);
    expect(run.out).toMatch(/^slim x1 +15\.0 +10\.0$/m);
    expect(run.out).toMatch(/^thick x1 +25\.0 +0\.0$/m);
    expect(run.out).toContain(`At equal noise ${best} x1 moves the most air`);
    const told = new RegExp(`^${side} k = ([\\d.]+),`, 'm').exec(run.out)?.[1];
    expect(Math.abs(Number(told) / flip - 1)).toBeLessThan(0.03);
  });

  it('says so where nothing flips, and where no fan can have the level that was asked for', () => {
    const better = compared(box(4, 'straight'));
    expect(better.result.flips.filter(({ harder }) => harder)).toEqual([]);
    const file = written('box.yaml', box(4, 'slim'));
    for (const level of ['60 dB(A)', '-30 dB(A)']) {
      const args = [
        '--fan',
        'slim',
        '--fan',
        'thick',
        `--level=${level}`,
        '--catalog',
        shelf,
        '--no-shipped',
      ];
      const run = hushwright(['compare', file, '--build', 'one', ...args]);
      expect(run.code).toBe(1);
      expect(run.out).toContain('No variant has that level at any speed.');
    }
  });
});
