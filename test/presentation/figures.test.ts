import { describe, expect, it } from 'vitest';
import { atMost, figure, fixed, levelWords, NONE, prices, quantity } from '../../src/presentation/figures.ts';

describe('numbers', () => {
  it.each([
    [0.04, 1, '0.0'],
    [-0.04, 1, '0.0'],
    [-0.06, 1, '-0.1'],
    [9999.4, 0, '9999'],
    [9999.96, 1, '10 000.0'],
    [14_860, 0, '14 860'],
    [-1_234_567.25, 1, '-1 234 567.3'],
    [1489, -1, '1490'],
    [4, -1, '0'],
    [12_345, -1, '12 350'],
  ])('%d with %d decimals is %s', (value, decimals, text) => {
    expect(fixed(value, decimals)).toBe(text);
  });

  it('shows a dash where there is no number', () => {
    expect([Number.NaN, Number.POSITIVE_INFINITY].map((value) => fixed(value, 1))).toEqual([NONE, NONE]);
  });

  it('shows prices of one list alike', () => {
    expect(prices([12, undefined, 9])).toEqual(['12', NONE, '9']);
    expect(prices([12, 9.5])).toEqual(['12.00', '9.50']);
  });
});

describe('quantities', () => {
  // Conversions: 1 m³/s = 3600 m³/h, 0 °C = 273.15 K, 1/s = 60/min (definitions of the units).
  it('stand in the usual unit', () => {
    expect(quantity('flow', 0.01)).toBe('36.0 m³/h');
    expect(quantity('temperature', 358.15)).toBe('85.0 °C');
    expect(quantity('kelvins', -2.34)).toBe('-2.3 K');
    expect(quantity('level', 24.64)).toBe('24.6 dB(A)');
    expect(quantity('pressure', 14.32)).toBe('14.3 Pa');
    expect(figure('rpm', 24.8)).toBe('1490');
    expect(figure('percent', 0.447)).toBe('45');
  });

  it('call no sound silence', () => {
    expect(levelWords(Number.NEGATIVE_INFINITY)).toBe('silent');
  });
});

describe('a bound', () => {
  it.each([
    [0.01, '0.01'],
    [0.1 + 0.2, '0.3'],
    [0.0141, '0.015'],
    [3.21, '3.3'],
    [120.5, '130'],
    [0, '0'],
  ])('of %d is never shown smaller', (value, text) => {
    expect(atMost(value)).toBe(text);
  });
});
