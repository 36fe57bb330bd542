import { describe, expect, it } from 'vitest';
import { anySi, readRange, type ValueRange } from '../../src/quantities/value-range.ts';

function range(text: string, points = 5, spacing: 'linear' | 'log' = 'linear'): ValueRange {
  const read = readRange(text, points, spacing);
  if (typeof read === 'string') throw new Error(read);
  return read;
}

function texts(text: string, points = 5, spacing: 'linear' | 'log' = 'linear'): readonly string[] {
  const { positions, textAt } = range(text, points, spacing);
  return positions.map(textAt);
}

// Definitions of the SI; the rest is derived: equal steps, or equal ratios.
describe('a range of values', () => {
  it.each([
    ['3 mm to 7 mm', ['3 mm', '4 mm', '5 mm', '6 mm', '7 mm']],
    ['3 to 7 mm', ['3 mm', '4 mm', '5 mm', '6 mm', '7 mm']],
    ['-10 °C to 30 °C', ['-10 °C', '0 °C', '10 °C', '20 °C', '30 °C']],
    ['60 x 40 to 100 x 80 mm', ['60 x 40 mm', '70 x 50 mm', '80 x 60 mm', '90 x 70 mm', '100 x 80 mm']],
    ['90 x 1 mm to 90 x 5 mm', ['90 x 1 mm', '90 x 2 mm', '90 x 3 mm', '90 x 4 mm', '90 x 5 mm']],
    ['1 to 3', ['1', '1.5', '2', '2.5', '3']],
  ])('%s goes through its values', (text, expected) => {
    expect(texts(text)).toEqual(expected);
  });

  it('is spaced by equal ratios if asked', () => {
    expect(texts('1 mm to 16 mm', 5, 'log')).toEqual(['1 mm', '2 mm', '4 mm', '8 mm', '16 mm']);
    expect(readRange('0 mm to 16 mm', 5, 'log')).toContain('above zero');
  });

  it('is a list if written so, of words as well', () => {
    expect(texts('3 mm, 4 mm, 6 mm')).toEqual(['3 mm', '4 mm', '6 mm']);
    expect(range('3 mm, 4 mm, 6 mm').textAt(1.5)).toBe('5 mm');
    expect(texts('vent, shroud')).toEqual(['vent', 'shroud']);
    expect(range('vent, shroud').continuous).toBe(false);
    // A fan's name begins with no number: nothing lies between two of them.
    expect(range('s92-15-a, s80-25-a').continuous).toBe(false);
  });

  it('tells the number that changes, and its unit', () => {
    expect(range('90 x 1 mm to 90 x 5 mm').numberAt(0.5)).toBe(3);
    expect(range('90 x 1 mm to 90 x 5 mm').unit).toBe('mm');
  });

  it.each(['3 mm to 8 °C', 'few to many', '3 mm to ', ''])('refuses %s', (text) => {
    expect(typeof readRange(text, 5, 'linear')).toBe('string');
  });
});

describe('a text in SI', () => {
  it.each([
    ['4.25 mm', 0.00425, 'm'],
    ['20 °C', 293.15, 'K'],
    ['60 %', 0.6, ''],
    ['1200 rpm', 20, '1/s'],
    ['7', 7, ''],
  ])('%s', (text, value, unit) => {
    const si = anySi(text);
    expect(si?.value).toBeCloseTo(value, 12);
    expect(si?.unit).toBe(unit);
  });

  it('is a difference where the quantity is one', () => {
    expect(anySi('3 °C', true)).toEqual({ value: 3, unit: 'K' });
  });

  it('is none of a rectangle or a word', () => {
    expect(anySi('95 x 80 mm')).toBeUndefined();
    expect(anySi('shroud')).toBeUndefined();
  });
});
