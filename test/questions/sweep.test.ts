import { describe, expect, it } from 'vitest';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { readRange } from '../../src/quantities/value-range.ts';
import { findQuantity } from '../../src/questions/quantity.ts';
import { type Axis, type Sweep, type SweepOptions, sweep } from '../../src/questions/sweep.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { writtenTree } from '../../src/reading/variants/scenario-source.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { solveBuild } from '../../src/search/solve-build.ts';
import { hushwright, written } from '../commands/program.ts';
import { atSpeed, changed, FANS, readBoth, TWO_FANS } from '../scenarios/two-fans.ts';

/** The two fans with 330 W to cool and two duties. Invented. */
const BOX = changed(TWO_FANS, {
  'power: 0.001 W': 'power: 330 W',
  'builds: { as-drawn: {} }': `duties:
  - { duty: rest, share: 50 %, heat: 30 % }
  - { duty: work, share: 50 %, heat: 100 % }
builds: { as-drawn: {} }`,
});

const fans = readCatalogs([{ file: 'fans.yaml', text: FANS }]);

function swept(
  vary: readonly (readonly [string, string])[],
  options: SweepOptions & { points?: number; log?: boolean } = {},
  text = BOX,
): Sweep {
  const source = { file: 'box.yaml', text, fans: fans.ok ? fans.fans : [] };
  const enclosure = readBoth(text, FANS);
  const axes = vary.map(([name, values]): Axis => {
    const quantity = findQuantity(name, { written: writtenTree(source), enclosure });
    const range = readRange(values, options.points ?? 5, options.log ? 'log' : 'linear');
    if (typeof quantity === 'string' || typeof range === 'string') throw new Error(`${quantity} ${range}`);
    return { quantity, range };
  });
  return sweep({ source, enclosure, build: enclosure.places.map(() => 0) }, axes, options);
}

function stateAt({ points }: Sweep, index: number) {
  const state = points[index]?.state;
  if (state === undefined || typeof state === 'string') throw new Error(state ?? 'no such point');
  return state;
}

/** Text of the scenario with a value written in by hand: the other way to vary it. */
const by = (from: string, to: string) => readBoth(changed(BOX, { [from]: to }), FANS);

describe('a sweep at one speed', () => {
  it.each([
    ['site.room', '20 °C to 40 °C', 'room: 25 °C', 'room: 40 °C'],
    ['room', '20 °C to 40 °C', 'room: 25 °C', 'room: 40 °C'],
    ['heat.lamp.power', '200 W to 500 W', 'power: 330 W', 'power: 500 W'],
    ['heat', '50 % to 150 %', 'power: 330 W', 'power: 495 W'],
    ['elements.vent.K', '1 to 5', 'K: 2.5', 'K: 5'],
    ['elements.pair.inlet-gap', '2 mm to 20 mm', 'inlet-gap: 10 mm', 'inlet-gap: 20 mm'],
    ['site.altitude', '0 m to 2000 m', 'room: 25 °C', 'room: 25 °C, altitude: 2000 m'],
    [
      'airway.legs.in.recirculation',
      '0 % to 20 %',
      'to: box, through: [stack',
      'to: box, recirculation: 20 %, through: [stack',
    ],
    ['listener.distance', '0.5 m to 2 m', 'distance: 0.7 m', 'distance: 2 m'],
    ['assume.sound.fan-floor', '0 to 12', 'panel-mounting: 0', 'panel-mounting: 0, fan-floor: 12'],
  ])('of %s ends where the file with that value does', (name, values, from, to) => {
    const last = stateAt(swept([[name, values]], { speed: 0.6, points: 3 }), 2);
    const outcome = atSpeed(by(from, to), 0.6);
    expect(last.level).toBeCloseTo(outcome.level, 6);
    const margins = outcome.duties.map(({ tightest }) => tightest?.margin ?? Number.NaN);
    expect(last.tightest?.margin).toBeCloseTo(Math.min(...margins), 5);
    expect(last.fanPower).toBeCloseTo(outcome.fanPower, 9);
  });

  it('of all speeds follows the fan laws where the loss grows with the square of the flow', () => {
    // Fan laws (ISO 5801, from memory): flow with the speed, power with its cube. Next to no heat, so that the air does
    // not change; the stack loses with the square of the flow, the vent but for a thousandth.
    const cold = changed(BOX, { 'power: 330 W': 'power: 0.001 W' });
    const found = swept([['speed', '30 % to 90 %']], { points: 3 }, cold);
    const [slow, , fast] = [0, 1, 2].map((index) => stateAt(found, index));
    expect((fast?.duties[0]?.massFlow ?? 0) / (slow?.duties[0]?.massFlow ?? 1)).toBeCloseTo(3, 2);
    expect((fast?.fanPower ?? 0) / (slow?.fanPower ?? 1)).toBeCloseTo(27, 3);
  });

  it('takes revolutions as well as percent', () => {
    const percent = stateAt(swept([['speed.pair', '50 %, 60 %']]), 1);
    const turning = stateAt(swept([['speed.pair', '1000 rpm, 1200 rpm']]), 1);
    expect(turning.level).toBeCloseTo(percent.level, 9);
  });
});

describe('where adequacy changes', () => {
  it('is found as a root: in a file with that value the limit is just met', () => {
    const { crossings, axes } = swept([['site.room', '20 °C to 60 °C']], { speed: 0.6 });
    const [crossing] = crossings;
    expect(crossings.length).toBe(1);
    expect(crossing?.adequateAbove).toBe(false);
    const room = axes[0]?.range.textAt(crossing?.position ?? 0) ?? '';
    const outcome = atSpeed(by('room: 25 °C', `room: ${room}`), 0.6);
    const margins = outcome.duties.map(({ tightest }) => tightest?.margin ?? Number.NaN);
    expect(Math.abs(Math.min(...margins))).toBeLessThan(0.005);
    // The grid has 10 K between its points.
    expect(Number(/[\d.]+/.exec(room)?.[0]) % 10).toBeGreaterThan(0.01);
  });

  it('is the same on a coarse grid and on a fine one, at the quietest speeds', () => {
    const [coarse, fine] = [3, 9].map((points) => {
      const { crossings, axes } = swept([['heat', '60 % to 200 %']], { points });
      return axes[0]?.range.numberAt(crossings[0]?.position ?? 0) ?? Number.NaN;
    });
    expect(fine).toBeCloseTo(coarse ?? 0, 1);
    // Another way: with that heat full speed leaves nothing in hand.
    const plant = plantOf(by('power: 330 W', `power: ${3.3 * (fine ?? 0)} W`));
    const machine = assemble(
      plant,
      plant.enclosure.places.map(() => 0),
    );
    expect(Math.abs(solveBuild(machine, fasterIsCooler(plant)).reserve)).toBeLessThan(0.02);
  });

  it('is told from below as well', () => {
    const { crossings } = swept([['speed', '20 % to 100 %']], {});
    expect(crossings).toMatchObject([{ adequateAbove: true }]);
  });

  it('is not made up between numbers that have nothing between them', () => {
    const found = swept([['choices.pair.count', '1, 2']], {});
    expect(found.crossings).toEqual([]);
    expect(found.points[0]?.state).toContain('no longer possible');
  });
});

describe('the quietest speeds', () => {
  it('are those of a build solved by itself, and get louder as the room gets warmer', () => {
    const found = swept([['room', '20 °C to 40 °C']], { points: 3 });
    const levels = [0, 1, 2].map((index) => stateAt(found, index).level);
    // A difference one can see in the table: common practice, no source.
    expect((levels[1] ?? 0) - (levels[0] ?? 0)).toBeGreaterThan(0.1);
    expect((levels[2] ?? 0) - (levels[1] ?? 0)).toBeGreaterThan(0.1);
    const plant = plantOf(by('room: 25 °C', 'room: 40 °C'));
    const solved = solveBuild(
      assemble(
        plant,
        plant.enclosure.places.map(() => 0),
      ),
      fasterIsCooler(plant),
    );
    const ratios = solved.duties.map(({ point }) => point.ratios[0] ?? Number.NaN);
    const atForty = stateAt(found, 2).duties.map((duty) => duty.ratios[0] ?? 0);
    for (const [index, ratio] of atForty.entries()) expect(ratio).toBeCloseTo(ratios[index] ?? 0, 6);
  });

  it('may be looked for with the build anew at each point', () => {
    const free = changed(BOX, { 'count: 2': 'count: 1 to 2', 'builds: { as-drawn: {} }\n': '' });
    const kept = swept([['heat', '20 % to 150 %']], { points: 3 }, free);
    const anew = swept([['heat', '20 % to 150 %']], { points: 3, anew: true }, free);
    for (const index of [0, 1, 2]) {
      const [one, other] = [stateAt(kept, index), stateAt(anew, index)];
      if (one.adequate) expect(other.level).toBeLessThanOrEqual(one.level + 1e-6);
    }
    expect(anew.points.map(({ build }) => build)).not.toContain(undefined);
  });
});

describe('a choice that is varied', () => {
  const chosen = changed(BOX, {
    'choices:\n': 'choices:\n  sheet: { hole: [3 mm, 5 mm], web: [1 mm, 2 mm] }\n',
    'elements:\n': 'elements:\n  sheet: { perforated: 92 x 92 mm, hole: 4 mm, web: 1 mm, sheet: 1 mm }\n',
    'through: [vent]': 'through: [sheet, vent]',
    'builds: { as-drawn: {} }': 'builds: { as-drawn: { sheet: "hole 3 mm, web 2 mm" } }',
  });

  it('takes the place of the list, and the rest of the build stays', () => {
    const source = { file: 'box.yaml', text: chosen, fans: fans.ok ? fans.fans : [] };
    const enclosure = readBoth(chosen, FANS);
    const quantity = findQuantity('elements.sheet.hole', { written: writtenTree(source), enclosure });
    const range = readRange('3 mm to 6 mm', 3, 'linear');
    if (typeof quantity === 'string' || typeof range === 'string') throw new Error('no such quantity');
    const build = enclosure.builds[0]?.options ?? [];
    const found = sweep({ source, enclosure, build }, [{ quantity, range }], { speed: 0.6 });
    // Another way: the element written with these values, and no choice.
    const plain = changed(chosen, {
      '  sheet: { hole: [3 mm, 5 mm], web: [1 mm, 2 mm] }\n': '',
      'hole: 4 mm, web: 1 mm': 'hole: 6 mm, web: 2 mm',
      '{ sheet: "hole 3 mm, web 2 mm" }': '{}',
    });
    expect(stateAt(found, 2).level).toBeCloseTo(atSpeed(readBoth(plain, FANS), 0.6).level, 6);
  });

  it('is refused where whole elements are chosen, with what would do', () => {
    const whole = changed(BOX, {
      'choices:\n': 'choices:\n  vent: { element: [{ name: wide, passage: 92 mm }] }\n',
    });
    const source = { file: 'box.yaml', text: whole, fans: [] };
    const found = findQuantity('elements.vent.K', {
      written: writtenTree(source),
      enclosure: readBoth(BOX, FANS),
    });
    expect(found).toContain('has no say');
  });
});

describe('two quantities', () => {
  it('make a matrix whose rows are sweeps of one', () => {
    const matrix = swept(
      [
        ['room', '20 °C to 40 °C'],
        ['heat', '50 % to 100 %'],
      ],
      { points: 2, speed: 0.6 },
    );
    expect(matrix.points.length).toBe(4);
    const row = swept([['room', '20 °C to 40 °C']], { points: 2, speed: 0.6 });
    expect(stateAt(matrix, 3).tightest?.margin).toBeCloseTo(stateAt(row, 1).tightest?.margin ?? 0, 6);
  });
});

describe('the command', () => {
  const args = [
    'sweep',
    written('box.yaml', BOX),
    '--build',
    'as-drawn',
    '--catalog',
    written('fans.yaml', FANS),
    '--no-shipped',
  ];

  it('tells table, curve and crossing, with marks that need no colour', () => {
    const run = hushwright([...args, '--speed', '60', '--vary', 'room = 20 °C to 60 °C', '--points', '5']);
    expect(run.code).toBe(0);
    expect(run.out).toMatch(/^20 °C .* ok /m);
    expect(run.out).toMatch(/^60 °C .* OVER /m);
    expect(run.out).toMatch(/Adequate up to room = 3\d\.\d+ °C, not beyond\./);
    expect(run.out).toMatch(/●[⠀-⣿]*/);
  });

  it.each([
    ['elements.vnet.K = 1 to 3', 'did you mean "vent"?'],
    ['elements.vent.K = 1 mm to 3 mm', 'no value can be used'],
    ['speed.pare = 1 % to 3 %', 'did you mean "pair"?'],
    ['room: 20 °C to 40 °C', '--vary takes a quantity and its values'],
    ['room = 20 °C', ''],
  ])('answers or refuses %s in plain words', (vary, words) => {
    const run = hushwright([...args, '--vary', vary]);
    expect(run.err).toContain(words);
    expect(run.code).toBe(words === '' ? 0 : 2);
  });
});
