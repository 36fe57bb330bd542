import { describe, expect, it } from 'vitest';
import { readCatalog, readCatalogs } from '../../src/reading/catalog-file.ts';
import { freeDelivery, shutOff } from './fan-character.ts';
import { shippedFamilies } from './written-fan.ts';

const families = shippedFamilies();

describe('the reader of catalogs', () => {
  it('takes all shipped files together', () => {
    const outcome = readCatalogs(families);
    expect(outcome).toMatchObject({ ok: true });
    expect(outcome.ok ? outcome.fans.length : 0).toBe(families.flatMap((family) => family.fans).length);
  });

  // The other side is read by js-yaml and plain arithmetic in `written-fan.ts`, without the project's reader.
  it.each(families)('finds in $file the figures that stand there', ({ file, text, fans }) => {
    const outcome = readCatalog(file, text);
    const read = outcome.ok ? outcome.fans : [];
    expect(read.length).toBe(fans.length);
    for (const [i, written] of fans.entries()) {
      const fan = read[i];
      expect(fan).toMatchObject({
        id: written.id,
        provenance: 'invented',
        price: written.price,
        blades: written.blades,
        curve: { synthesised: written.boxOnly },
      });
      const figures = [fan?.size, fan?.depth, fan?.fullSpeed, fan?.holdFloor, fan?.startFloor, fan?.power];
      const expected = [
        written.size / 1000,
        written.depth / 1000,
        written.speed,
        written.hold,
        written.start,
        written.power,
      ];
      for (const [j, figure] of figures.entries()) expect(figure).toBeCloseTo(expected[j] ?? Number.NaN, 10);
      expect(fan?.curve.freeDelivery).toBeCloseTo(freeDelivery(written), 12);
      expect(fan?.curve.shutOff).toBeCloseTo(shutOff(written), 9);
      const ratings = [...written.ratings].sort((a, b) => a.speed - b.speed);
      expect(fan?.ratings.map((rating) => rating.basisStated)).toEqual(ratings.map((r) => r.basisStated));
      for (const [j, rating] of ratings.entries()) {
        expect(fan?.ratings[j]?.speed).toBeCloseTo(rating.speed, 10);
        expect(fan?.ratings[j]?.level).toBeCloseTo(rating.level, 9);
      }
    }
  });
});
