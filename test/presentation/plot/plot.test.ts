import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { newCanvas } from '../../../src/presentation/plot/canvas.ts';
import { plot } from '../../../src/presentation/plot/plot.ts';
import { ticksOf } from '../../../src/presentation/plot/ticks.ts';

const SEED = 28;

describe('ticks', () => {
  it('are round, evenly spaced, inside the range and no more than asked', () => {
    const ends = fc.tuple(
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
    );
    fc.assert(
      fc.property(ends, fc.integer({ min: 3, max: 12 }), ([low, range], most) => {
        const high = low + range;
        const values = ticksOf(low, high, most).map(({ value }) => value);
        expect(values.length).toBeLessThanOrEqual(most);
        expect(values.length).toBeGreaterThan(0);
        const slack = 1e-6 * range;
        expect(values.every((value) => value >= low - slack && value <= high + slack)).toBe(true);
        const steps = values.slice(1).map((value, index) => value - (values[index] as number));
        for (const step of steps) {
          // Round: 1, 2 or 5 times a power of ten.
          const digit = step / 10 ** Math.floor(Math.log10(step) + 1e-6);
          expect(Math.min(...[1, 2, 5, 10].map((round) => Math.abs(digit - round)))).toBeLessThan(1e-4);
        }
      }),
      { seed: SEED },
    );
  });

  it('tell apart what they stand for', () => {
    const texts = ticksOf(0, 0.004, 5).map(({ text }) => text);
    expect(texts).toEqual(['0.000', '0.001', '0.002', '0.003', '0.004']);
    expect(ticksOf(0.25, 16, 12, 'log').map(({ text }) => text)).toEqual(['0.5', '1', '2', '5', '10']);
    expect(ticksOf(-5, 5, 3).map(({ text }) => text)).toEqual(['-5', '0', '5']);
    expect(ticksOf(3, 3, 5)).toEqual([]);
  });
});

describe('a canvas of braille', () => {
  it('has the dots of Unicode', () => {
    // The Unicode Standard, block Braille Patterns: U+2800 and dots 1, 2, 3, 7 on the left as bits 0, 1, 2, 6; dots 4, 5,
    // 6, 8 on the right as bits 3, 4, 5, 7.
    const down = newCanvas(1, 1);
    down.line({ across: 0, up: 1 }, { across: 0, up: 0 });
    expect(down.lines()).toEqual([String.fromCodePoint(0x2800 + 0b0100_0111)]);
    const right = newCanvas(1, 1);
    right.line({ across: 1, up: 1 }, { across: 1, up: 0 });
    expect(right.lines()).toEqual([String.fromCodePoint(0x2800 + 0b1011_1000)]);
  });

  it('puts marks over lines, first row on top', () => {
    const canvas = newCanvas(3, 2);
    canvas.line({ across: 0, up: 0 }, { across: 1, up: 1 });
    canvas.mark({ across: 1, up: 1 }, '●');
    canvas.mark({ across: 0, up: 0 }, '×');
    const [top = '', bottom = ''] = canvas.lines();
    expect([top.at(-1), bottom[0]]).toEqual(['●', '×']);
  });
});

describe('a plot', () => {
  const points = Array.from({ length: 9 }, (_, index) => ({ x: index, y: index ** 2 }));
  const options = { width: 60, height: 8, xLabel: 'x, mm', yLabel: 'y, K' };

  it.each([40, 60, 80, 100])('is no wider than %d columns', (width) => {
    const lines = plot([{ name: 'square', mark: '●', points }], { ...options, width });
    expect(Math.max(...lines.map((line) => stringWidth(line)))).toBeLessThanOrEqual(width);
    expect(lines.length).toBe(1 + options.height + 4);
  });

  it('shows a rising curve rising, and leaves a gap where there is no number', () => {
    const gap = points.map((point) => (point.x === 4 ? { ...point, y: Number.NaN } : point));
    const lines = plot([{ name: '', mark: '●', points: gap }], options);
    const rows = lines.flatMap((line, row) =>
      [...line].flatMap((letter, column) => (letter === '●' ? [{ row, column }] : [])),
    );
    expect(rows.length).toBeGreaterThan(5);
    const byColumn = rows.toSorted((one, other) => one.column - other.column).map(({ row }) => row);
    expect(byColumn).toEqual(byColumn.toSorted((one, other) => other - one));
    // The middle of nine points lies in the middle of the field: nothing is drawn there.
    const middle = lines.slice(1, 1 + options.height).map((line) => line.slice(30, 33).trim());
    expect(middle.join('')).toBe('');
  });

  it('is nothing where there is nothing to draw, and survives one point and equal ones', () => {
    expect(plot([{ name: '', mark: '●', points: [{ x: 1, y: Number.NaN }] }], options)).toEqual([]);
    expect(plot([{ name: '', mark: '●', points: [{ x: 1, y: 2 }] }], options).join('')).toContain('●');
    const flat = plot([{ name: '', mark: '●', points: [1, 2, 3].map((x) => ({ x, y: 5 })) }], options);
    expect(flat.join('')).not.toMatch(/NaN|Infinity/);
  });
});
