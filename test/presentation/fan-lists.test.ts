import { describe, expect, it } from 'vitest';
import { fanListDocument, fanListView } from '../../src/presentation/fans/fan-list-view.ts';
import { stockDocument, stockView } from '../../src/presentation/fans/stock-view.ts';
import { plain } from '../../src/presentation/paint.ts';
import { fanList } from '../../src/questions/fans/fan-list.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { shippedFans, shippedStock } from '../scenarios/shipped.ts';

const meta = { version: '0', command: 'fans' };
const path = { flow: 20 / 3600, pressure: 8 };
const listing = { ...fanList(shippedFans, { sizes: [0.08], by: 'level', path }, SOUND_ASSUMPTIONS), path };

describe('a list of fans', () => {
  const lines = fanListView(listing, { paint: plain }).split('\n');

  it('has a line for each fan, and says for what it was made', () => {
    expect(lines.length).toBeGreaterThan(listing.rows.length);
    for (const [index, { fan }] of listing.rows.entries()) expect(lines[index + 2]).toContain(fan.id);
    const words = lines.slice(listing.rows.length + 2).join(' ');
    expect(words).toContain(`${listing.rows.length} fans.`);
    expect(words).toContain('20.0 m³/h through a path that loses 8.0 Pa');
    expect(words).toContain(`${listing.tooWeak} more are too weak for it.`);
  });

  // Conversions by hand: 3600 s in an hour, 60 in a minute; the same figures by way of the JSON document.
  it('shows what its document holds', () => {
    const { result } = JSON.parse(JSON.stringify(fanListDocument(listing, meta)));
    const [first] = result.fans;
    const shown = (lines[2] ?? '').trim().split(/\s{2,}/);
    expect(shown.slice(1, 6)).toEqual([
      (1000 * first.size_m).toFixed(0),
      (1000 * first.depth_m).toFixed(0),
      first.path.level_dBA.toFixed(1),
      (100 * first.path.ratio).toFixed(0),
      String(Math.round(6 * first.fullSpeed_1_s * first.path.ratio) * 10),
    ]);
  });

  it('leaves columns out on a narrow terminal, and names them', () => {
    const narrow = fanListView(listing, { width: 60, paint: plain }).split('\n');
    expect(Math.max(...narrow.map((line) => line.length))).toBeLessThanOrEqual(60);
    expect(narrow.join(' ')).toContain('left out to fit 60 columns');
  });
});

describe('a list of stock', () => {
  it('tells what each item settles, how open it is and where that comes from', () => {
    const text = stockView(shippedStock, { paint: plain });
    expect(text).toMatch(/^R5T8 +perforated +35 +hole 5 mm, web 3 mm, pattern staggered$/m);
    for (const { source } of shippedStock) expect(text).toContain(source);
    const { result } = JSON.parse(JSON.stringify(stockDocument(shippedStock, meta)));
    expect(result.stock).toHaveLength(shippedStock.length);
  });
});
