import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { outcomeBands } from '../../../src/bands/outcome-bands.ts';
import { airCsv } from '../../../src/presentation/questions/air-view.ts';
import { compareCsv } from '../../../src/presentation/questions/compare-data.ts';
import { marginCsv } from '../../../src/presentation/questions/margin-data.ts';
import { sweepCsv } from '../../../src/presentation/questions/sweep-data.ts';
import { readRange } from '../../../src/quantities/value-range.ts';
import { airNeed, airNeedTable, USUAL_AROUND } from '../../../src/questions/air-need.ts';
import { compare } from '../../../src/questions/compare/compare.ts';
import { fanVariants } from '../../../src/questions/compare/variants.ts';
import { marginMatrix } from '../../../src/questions/margin/margin.ts';
import { findQuantity } from '../../../src/questions/quantity.ts';
import { sweep } from '../../../src/questions/sweep.ts';
import { readCatalogs } from '../../../src/reading/catalog-file.ts';
import { writtenTree } from '../../../src/reading/variants/scenario-source.ts';
import { atSpeed, changed, FANS, readBoth, TWO_FANS } from '../../scenarios/two-fans.ts';

const BOX = changed(TWO_FANS, { 'power: 0.001 W': 'power: 120 W' });
const fans = readCatalogs([{ file: 'fans.yaml', text: FANS }]);
const source = { file: 'box.yaml', text: BOX, fans: fans.ok ? fans.fans : [] };
const enclosure = readBoth(BOX, FANS);
const base = { source, enclosure, build: enclosure.places.map(() => 0) };

/** Rows by their heads, read by csv-parse. */
function rowsOf(text: string): readonly Readonly<Record<string, string>>[] {
  return parse(text, { columns: true, record_delimiter: '\r\n' });
}

/** A row of the full outcome at 60 % of full speed: another way than that of the tables. */
const outcome = atSpeed(enclosure, 0.6).duties[0];

describe('answers as comma-separated values, in SI', () => {
  it('of a sweep', () => {
    const quantity = findQuantity('room', { written: writtenTree(source), enclosure });
    const range = readRange('25 °C, 45 °C, warm', 2, 'linear');
    if (typeof quantity === 'string' || typeof range === 'string') throw new Error('no such quantity');
    const rows = rowsOf(sweepCsv(sweep(base, [{ quantity, range }], { speed: 0.6 })));
    expect(rows.map((row) => row['room [K]'])).toEqual(['298.15', '318.15', '']);
    expect(Number(rows[0]?.['mean level [dB(A)]'])).toBeCloseTo(outcome?.level ?? 0, 3);
    expect(Number(rows[0]?.['least margin [K]'])).toBeCloseTo(outcome?.tightest?.margin ?? 0, 3);
    expect(Number(rows[0]?.['speed of pair [1]'])).toBe(0.6);
    expect(rows[2]?.['reason']).toContain('found warm');
  });

  it('of margins', () => {
    const matrix = marginMatrix(base, {
      rooms: [298.15],
      altitudes: [],
      dust: [],
      slower: [],
      lostFans: true,
      speed: 0.6,
    });
    if (typeof matrix === 'string') throw new Error(matrix);
    const rows = rowsOf(marginCsv(matrix));
    expect(rows.map((row) => row['one fan dead in'])).toEqual(['', 'pair']);
    expect(Number(rows[0]?.['margin [K]'])).toBeCloseTo(outcome?.tightest?.margin ?? 0, 3);
    expect(rows[0]?.['back flow [m3/s]']).toBe('');
    expect(Number(rows[1]?.['back flow [m3/s]'])).toBeGreaterThan(0);
  });

  it('of a comparison', () => {
    const fan = source.fans[0];
    if (!fan) throw new Error('there is no fan');
    const place = enclosure.places.findIndex(({ id }) => id === 'pair');
    const comparison = compare(
      fanVariants(base, place, [fan, { ...fan, id: 'other, deeper', depth: 0.038 }], 2),
      { place },
    );
    const rows = rowsOf(compareCsv(comparison));
    expect(rows.length).toBe(6);
    expect(rows[3]?.['variant']).toBe('other, deeper x2');
    const full = atSpeed(enclosure, 1).duties[0];
    expect(Number(rows[0]?.['level [dB(A)]'])).toBeCloseTo(full?.level ?? 0, 3);
    expect(Number(rows[0]?.['mass flow [kg/s]'])).toBeCloseTo(full?.throughFlow ?? 0, 6);
    const bands = outcomeBands(enclosure, atSpeed(enclosure, 1))?.duties[0];
    expect(Number(rows[0]?.['level from [dB(A)]'])).toBeCloseTo(bands?.level.low ?? 0, 3);
    expect(Number(rows[0]?.['level to [dB(A)]'])).toBeCloseTo(bands?.level.high ?? 0, 3);
    expect(Number(rows[0]?.['limits hold [1]'])).toBe(bands?.holding);
    // The other fan is the same but for its name and depth.
    expect(rows.map((row) => row['standing'])).toEqual([
      '',
      '',
      '',
      'no-real-difference',
      '',
      'no-real-difference',
    ]);
    expect(rows.map((row) => row['quieter [1]'])).toEqual(['', '', '', '0.5', '', '0.5']);
    expect(rows[3]?.['against']).toBe(rows[0]?.['variant']);
  });

  it('of the air', () => {
    const table = airNeedTable(95, 10, USUAL_AROUND);
    const rows = rowsOf(airCsv({ need: airNeed(95, 10, USUAL_AROUND), table, around: USUAL_AROUND }));
    // Energy balance: twice the heat or half the rise take twice the air.
    const flow = (heat: string, rise: string) =>
      Number(rows.find((row) => row['heat [W]'] === heat && row['rise [K]'] === rise)?.['flow [m3/s]']);
    expect(flow('190', '10') / flow('95', '10')).toBeCloseTo(2, 5);
    expect(flow('95', '5') / flow('95', '10')).toBeCloseTo(2, 5);
  });
});
