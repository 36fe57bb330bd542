import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { hushwright, written } from '../commands/program.ts';
import { atSpeed, changed, FANS, readBoth, TWO_FANS } from '../scenarios/two-fans.ts';

/** Three loads on the two fans, floors of 20 and 40 %, and a band to keep out of. Invented. */
const BOX = changed(TWO_FANS, {
  'power: 0.001 W': 'power: 95 W',
  'limit: 60 °C': 'limit: 50 °C',
  'inlet-gap: 10 mm': 'inlet-gap: 10 mm, avoid: [[700 rpm, 1000 rpm]]',
  'builds: { as-drawn: {} }': `duties:
  - { duty: idle, share: 60 %, heat: 20 % }
  - { duty: typical, share: 40 %, heat: 70 % }
  - { duty: peak, share: 0 %, heat: 100 %, room: 33 °C }
builds: { as-drawn: {} }`,
});
const SHELF = changed(FANS, { 'hold: 20 %': 'hold: 20 %\n    start: 40 %' });

const args = [
  written('box.yaml', BOX),
  '--build',
  'as-drawn',
  '--catalog',
  written('fans.yaml', SHELF),
  '--no-shipped',
];

interface Speed {
  readonly ratio: number;
  readonly speed_1_s: number;
}

interface Rung {
  readonly from_K: number | null;
  readonly back_K: number | null;
  readonly drop_K: number | null;
  readonly speeds: readonly Speed[];
  readonly startFirst: readonly string[];
}

describe('the quietest speeds of three loads', () => {
  const run = hushwright(['speeds', ...args, '--json']);
  const { result } = JSON.parse(run.out);
  const speeds: readonly number[] = result.duties.map(
    ({ speeds: [first] }: { speeds: Speed[] }) => first?.ratio,
  );
  const rungs: readonly Rung[] = result.controller.rungs;
  const all = [...speeds, ...rungs.map((rung) => rung.speeds[0]?.ratio ?? Number.NaN)];

  it('rise with the load, hold every limit, and less would not do', () => {
    expect(run.code).toBe(0);
    const [idle = 0, typical = 0, peak = 0] = speeds;
    expect(idle).toBeLessThanOrEqual(typical);
    expect(typical).toBeLessThan(peak);
    // Another way: the whole outcome at these speeds, and a hundredth slower.
    const enclosure = readBoth(BOX, SHELF);
    const adequateAt = (ratio: number, duty: number) => atSpeed(enclosure, ratio).duties[duty]?.adequate;
    expect([0, 1, 2].map((duty) => adequateAt((speeds[duty] ?? 0) + 1e-4, duty))).toEqual([true, true, true]);
    expect(adequateAt(0.99 * peak, 2)).toBe(false);
  });

  it('never lie below the hold floor nor inside the band, in the table of the controller neither', () => {
    expect(rungs.length).toBeGreaterThan(1);
    // Full speed is 2000 rpm: the band is from 35 to 50 %.
    for (const ratio of all) {
      expect(ratio).toBeGreaterThanOrEqual(0.2);
      expect(ratio <= 0.35 + 1e-9 || ratio >= 0.5 - 1e-9).toBe(true);
    }
  });

  it('are told with the floor at which fans start, out of the band too', () => {
    // 40 % lies in the band: the least speed above it that does not is 50 %.
    expect(result.banks[0]).toMatchObject({ holdFloor: { ratio: 0.2 }, startFloor: { ratio: 0.5 } });
    for (const {
      speeds: [first],
      startFirst,
    } of rungs)
      expect(startFirst.length > 0).toBe((first?.ratio ?? 0) < 0.5);
  });

  it('come with a hysteresis (to the digits of JSON) that is wider than what a step of speed changes', () => {
    for (const { from_K, back_K, drop_K } of rungs.slice(1)) {
      if (from_K === null || back_K === null || drop_K === null)
        throw new Error('a line without temperatures');
      expect(from_K - back_K).toBeGreaterThanOrEqual(drop_K + 1 - 1e-3);
    }
    const rising = rungs.slice(1).map(({ from_K }) => from_K ?? 0);
    expect(rising).toEqual(rising.toSorted((one, other) => one - other));
  });
});

describe('the tables as CSV', () => {
  const read = (text: string): readonly Record<string, string>[] =>
    parse(text, { columns: true, record_delimiter: '\r\n' });

  it('hold the line over temperature for a controller', () => {
    const run = hushwright(['speeds', ...args, '--csv']);
    const rows = read(run.out);
    expect(rows.length).toBeGreaterThan(1);
    expect(rows[0]?.['above [K]']).toBe('');
    for (const row of rows.slice(1)) {
      expect(Number(row['above [K]']) - Number(row['above [degC]'])).toBeCloseTo(273.15, 3);
      expect(Number(row['pair [1/s]'])).toBeCloseTo((Number(row['pair [1]']) * 2000) / 60, 4);
    }
  });

  it('hold the speeds of the duties', () => {
    const rows = read(hushwright(['speeds', ...args, '--csv', '--table', 'duties']).out);
    expect(rows.map(({ duty }) => duty)).toEqual(['idle', 'typical', 'peak']);
    expect(rows.every(({ adequate }) => adequate === 'true')).toBe(true);
  });
});

describe('the tables as text', () => {
  it('say floors, bands and what the controller reads', () => {
    const { out } = hushwright(['speeds', ...args]);
    expect(out).toMatch(/^pair +e92 x2 +2000 +50 %, 1000 rpm +20 %, 400 rpm +700 to 1000$/m);
    expect(out).toContain('Controller: speed over the temperature of lamp, limit 50.0 °C');
    expect(out).toContain('it cannot hunt');
  });
});
