import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { outcomeBands } from '../../src/bands/outcome-bands.ts';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { plain } from '../../src/presentation/paint.ts';
import { sweepCsv, sweepDocument } from '../../src/presentation/questions/sweep-data.ts';
import { sweepView } from '../../src/presentation/questions/sweep-view.ts';
import { readRange } from '../../src/quantities/value-range.ts';
import { findQuantity } from '../../src/questions/quantity.ts';
import { type Axis, type Sweep, type SweepOptions, sweep } from '../../src/questions/sweep.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { writtenTree } from '../../src/reading/variants/scenario-source.ts';
import { atSpeed, changed, FANS, readBoth, TWO_FANS } from '../scenarios/two-fans.ts';

/** Two fans with two limits to hold in two duties. Invented. */
const BOX = changed(TWO_FANS, {
  'power: 0.001 W, on: stack, limit: 60 °C }':
    'power: 330 W, on: stack, limit: 60 °C }\n  - { part: board, power: 20 W, in: box, limit: 54 °C }',
  'builds: { as-drawn: {} }': `duties:
  - { duty: rest, share: 50 %, heat: 30 % }
  - { duty: work, share: 50 %, heat: 100 % }
builds: { as-drawn: {} }`,
});

const fans = readCatalogs([{ file: 'fans.yaml', text: FANS }]);

function swept(vary: readonly (readonly [string, string])[], options: SweepOptions, text = BOX): Sweep {
  const source = { file: 'box.yaml', text, fans: fans.ok ? fans.fans : [] };
  const enclosure = readBoth(text, FANS);
  const axes = vary.map(([name, values]): Axis => {
    const quantity = findQuantity(name, { written: writtenTree(source), enclosure });
    const range = readRange(values, 3, 'linear');
    if (typeof quantity === 'string' || typeof range === 'string') throw new Error(`${quantity} ${range}`);
    return { quantity, range };
  });
  return sweep({ source, enclosure, build: enclosure.places.map(() => 0) }, axes, options);
}

/** The other route: bands of the whole outcome, as `solve` tells them, of the file with that value written in. */
function toldOf(enclosure: Enclosure, speed: number) {
  const bands = outcomeBands(enclosure, atSpeed(enclosure, speed));
  if (!bands) throw new Error('no solution');
  const least = bands.duties
    .flatMap(({ margins }) => margins.map(({ margin }) => margin))
    .toSorted((one, other) => one.expected - other.expected)[0];
  return { level: bands.level, margin: least, holding: bands.holding };
}

const at = (room: number) => readBoth(changed(BOX, { 'room: 25 °C': `room: ${room} °C` }), FANS);

const none = { usual: 0, of: {} };

/** An enclosure of which all is known, but for a vanishing doubt of the speed exponent, which weighs ratings. */
function certain(enclosure: Enclosure): Enclosure {
  const { sound } = enclosure.assumptions;
  return {
    ...enclosure,
    uncertainties: {
      room: 0,
      heat: none,
      fixed: none,
      paste: none,
      base: none,
      pipes: none,
      fins: none,
      finsBehindFan: 0,
      loss: none,
      skin: none,
      recirculation: none,
      curve: { measured: 0, datasheet: 0, box: 0, of: {} },
      slowFan: 0,
      fanPower: 0,
      rating: none,
    },
    assumptions: {
      ...enclosure.assumptions,
      sound: {
        ...sound,
        speedExponentUncertainty: 1e-9,
        workingPoint: sound.workingPoint.map((knot) => ({ ...knot, uncertainty: 0 })),
        stall: { ...sound.stall, uncertainty: 0 },
        overdrivenUncertainty: 0,
        uncertainty: {
          ...sound.uncertainty,
          installationShare: 0,
          installationLeast: 0,
          opening: 0,
          floor: 0,
          panelMounting: 0,
          attenuation: 0,
        },
      },
    },
  };
}

describe('how sure the points of a sweep are', () => {
  const found = swept([['site.room', '25 °C, 32 °C, warm']], { speed: 0.6 });

  it.each([
    [0, 25],
    [1, 32],
  ])('is the same as of the build solved by itself, point %i', (index, room) => {
    const sure = found.points[index]?.sure;
    const told = toldOf(at(room), 0.6);
    for (const end of ['low', 'expected', 'high'] as const) {
      expect(sure?.level[end]).toBeCloseTo(told.level[end], 4);
      expect(sure?.margin?.[end]).toBeCloseTo(told.margin?.[end] ?? Number.NaN, 3);
    }
    // One draw of 2000 may fall on the other side by rounding.
    expect(Math.abs((sure?.holding ?? 0) - told.holding)).toBeLessThan(0.0011);
    expect((sure?.level.high ?? 0) - (sure?.level.low ?? 0)).toBeGreaterThan(1);
  });

  it('grows less likely to hold as the room gets warmer', () => {
    // Derived: every margin falls with the room. Neither is certain, so that there is something to be right about.
    const [cool, warm] = found.points.map(({ sure }) => sure?.holding ?? Number.NaN);
    expect(cool).toBeLessThan(0.95);
    expect(warm).toBeGreaterThan(0.005);
    expect(cool).toBeGreaterThan((warm ?? 1) + 0.2);
  });

  it('has no width where nothing is uncertain', () => {
    // Derived from what the words mean.
    const enclosure = certain(readBoth(BOX, FANS));
    const quantity = findQuantity('room', { written: {}, enclosure });
    const range = readRange('-10 °C to 50 °C', 3, 'linear');
    if (typeof quantity === 'string' || typeof range === 'string') throw new Error('no such quantity');
    const source = { file: 'box.yaml', text: BOX, fans: [] };
    const base = { source, enclosure, build: enclosure.places.map(() => 0) };
    const { points } = sweep(base, [{ quantity, range }], { speed: 0.6 });
    for (const { sure, state } of points) {
      if (!sure?.margin || typeof state === 'string') throw new Error('no solution');
      expect(sure.level.high - sure.level.low).toBeLessThan(1e-6);
      expect(sure.margin.high - sure.margin.low).toBeLessThan(1e-6);
      expect(sure.level.expected).toBeCloseTo(state.level, 5);
      expect(sure.margin.expected).toBeCloseTo(state.tightest?.margin ?? Number.NaN, 4);
      expect(sure.holding).toBe(state.adequate ? 1 : 0);
    }
    // Both answers come up.
    expect(new Set(points.map(({ sure }) => sure?.holding))).toEqual(new Set([0, 1]));
  });

  it('has nothing to say without a solution', () => {
    expect(found.points[2]?.sure).toBeNull();
  });

  it('is left out if nobody asks', () => {
    const bare = swept([['room', '25 °C']], { speed: 0.6, bands: false });
    expect(bare.points.map(({ sure }) => sure)).toEqual([null]);
    expect(sweepView(bare, { title: 'box', shown: 'level', paint: plain })).not.toContain('nine times');
  });

  it('stands in rows, data and cells', () => {
    const text = sweepView(found, { title: 'box', shown: 'level', paint: plain, width: 100 });
    const [low, high] = [found.points[0]?.sure?.level.low ?? 0, found.points[0]?.sure?.level.high ?? 0];
    expect(text).toMatch(new RegExp(`^25 °C .* ${low.toFixed(0)} to ${high.toFixed(0)} `, 'm'));
    expect(text).toContain('nine times in ten');
    for (const width of [80, 100]) {
      const lines = sweepView(found, { title: 'box', shown: 'level', paint: plain, width }).split('\n');
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
    }
    const meta = { version: '0', command: 'sweep', warnings: [] };
    const { result } = JSON.parse(JSON.stringify(sweepDocument('box', found, meta)));
    expect(result.points[0].sure.level_dBA.low).toBeCloseTo(low, 3);
    expect(result.points[0].sure.margin_K.expected).toBeCloseTo(result.points[0].state.tightest.margin_K, 3);
    expect(result.points[2].sure).toBeNull();
    const rows: readonly Readonly<Record<string, string>>[] = parse(sweepCsv(found), {
      columns: true,
      record_delimiter: '\r\n',
    });
    expect(Number(rows[0]?.['mean level to [dB(A)]'])).toBeCloseTo(high, 3);
    expect(Number(rows[1]?.['limits hold [1]'])).toBe(found.points[1]?.sure?.holding);
    expect(rows[2]?.['limits hold [1]']).toBe('');
  });

  it('is told of a matrix as of its rows', () => {
    const matrix = swept(
      [
        ['site.room', '25 °C, 32 °C'],
        ['heat', '100 %'],
      ],
      { speed: 0.6 },
    );
    expect(matrix.points.map(({ sure }) => sure)).toEqual(found.points.slice(0, 2).map(({ sure }) => sure));
  });
});
