import { describe, expect, it } from 'vitest';
import { pressureRise } from '../../src/fan/curve.ts';
import { FAN_ORDERS, type FanWish, fanList } from '../../src/questions/fans/fan-list.ts';
import { pathPoint } from '../../src/questions/fans/path-point.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { shippedFans } from '../scenarios/shipped.ts';

const ALL: FanWish = { sizes: [], by: 'fan' };
const boxed = shippedFans.filter(({ curve }) => curve.synthesised);

describe('a fan on a path', () => {
  const path = { flow: 20 / 3600, pressure: 5 };

  // Derived: p0·(1 − x/2 − x²/2) = k·p0·x² has the root x = (√(1/4 + 4(k + 1/2)) − 1/2) / (2(k + 1/2)).
  it.each(boxed)('with box figures turns as the closed form says: $id', (fan) => {
    const { freeDelivery, shutOff } = fan.curve;
    const k = ((path.pressure / path.flow ** 2) * freeDelivery ** 2) / shutOff;
    const x = (Math.sqrt(0.25 + 4 * (k + 0.5)) - 0.5) / (2 * (k + 0.5));
    const point = pathPoint(fan, path, SOUND_ASSUMPTIONS);
    expect(point.resistance).toBeCloseTo(k, 12);
    expect(point.flowShare).toBeCloseTo(x, 9);
    expect(point.ratio).toBeCloseTo(path.flow / (x * freeDelivery), 9);
  });

  // From the definition: at that speed the fan's rise at the asked flow is the loss of the path.
  it('gives the pressure the path loses, whatever the fan', () => {
    for (const fan of shippedFans) {
      const { ratio } = pathPoint(fan, path, SOUND_ASSUMPTIONS);
      expect(pressureRise(fan.curve, path.flow, ratio, 1), fan.id).toBeCloseTo(path.pressure, 6);
    }
  });

  it('is told too weak above full speed, and kept at its hold floor below it', () => {
    const point = (pressure: number, flow: number) =>
      pathPoint(shippedFans[0] as never, { flow, pressure }, SOUND_ASSUMPTIONS);
    expect(point(500, 100 / 3600).reach).toBe('too weak');
    const idle = point(1e-4, 0.1 / 3600);
    expect(idle.reach).toBe('below hold');
    expect(idle.level).toBeGreaterThan(SOUND_ASSUMPTIONS.fanFloor);
  });
});

describe('a list of fans', () => {
  const ids = (wish: FanWish) => fanList(shippedFans, wish, SOUND_ASSUMPTIONS).rows.map(({ fan }) => fan.id);

  it('without a wish is the catalog by id', () => {
    expect(ids(ALL)).toEqual(shippedFans.map(({ id }) => id).toSorted());
  });

  // Brute force: the same question asked of each fan by itself.
  it('keeps what fits and nothing else', () => {
    const wish: FanWish = { sizes: [0.08, 0.0925], depth: 0.025, price: 10, level: 28, by: 'price' };
    const { rows } = fanList(shippedFans, wish, SOUND_ASSUMPTIONS);
    const levels = new Map(
      fanList(shippedFans, ALL, SOUND_ASSUMPTIONS).rows.map((row) => [row.fan.id, row.fullLevel]),
    );
    const fitting = shippedFans.filter(
      ({ id, size, depth, price = 99 }) =>
        (size === 0.08 || size === 0.092) && depth <= 0.025 && price <= 10 && (levels.get(id) ?? 99) <= 28,
    );
    expect(rows.length).toBeGreaterThan(5);
    expect(rows.map(({ fan }) => fan.id).toSorted()).toEqual(fitting.map(({ id }) => id).toSorted());
    const prices = rows.map(({ fan }) => fan.price ?? 0);
    expect(prices).toEqual(prices.toSorted((one, other) => one - other));
  });

  it.each(FAN_ORDERS)('by %s holds every fan once, ties by id or level, the same each time', (by) => {
    const path = { flow: 15 / 3600, pressure: 4 };
    const { rows, tooWeak } = fanList(shippedFans, { sizes: [], by, path }, SOUND_ASSUMPTIONS);
    expect(rows.length + tooWeak).toBe(shippedFans.length);
    const again = fanList(shippedFans.toReversed(), { sizes: [], by, path }, SOUND_ASSUMPTIONS);
    expect(again.rows.map(({ fan }) => fan.id)).toEqual(rows.map(({ fan }) => fan.id));
  });

  it('by level on a path puts the quietest there first, not the quietest at full speed', () => {
    const wish: FanWish = { sizes: [], by: 'level', path: { flow: 20 / 3600, pressure: 8 } };
    const { rows } = fanList(shippedFans, wish, SOUND_ASSUMPTIONS);
    const levels = rows.map(({ point }) => point?.level ?? Number.NaN);
    expect(levels).toEqual(levels.toSorted((one, other) => one - other));
    const full = rows.map(({ fullLevel }) => fullLevel);
    expect(full).not.toEqual(full.toSorted((one, other) => one - other));
  });
});
