import { describe, expect, it } from 'vitest';
import { waterfall } from '../../src/presentation/waterfall.ts';
import { part } from './sample-outcomes.ts';

function barsOf(...rises: readonly (readonly number[])[]): readonly (readonly string[])[] {
  const parts = rises.map((amounts, index) =>
    part(`part ${index}`, 300, 300 + amounts.reduce((sum, amount) => sum + amount, 0), [
      ...amounts.map((amount) => ({ label: 'step', amount })),
    ]),
  );
  return waterfall(parts).map((lines) => lines.map((line) => (typeof line === 'string' ? line : line.text)));
}

function ends(bar: string): readonly [number, number] {
  return [bar.length - bar.trimStart().length, bar.length];
}

describe('a waterfall', () => {
  it('has a bar for the room, one a step and one for the sum', () => {
    const [bars = []] = barsOf([10, 20, 30]);
    expect(bars).toHaveLength(5);
  });

  it('begins each step where the one before ended, in proportion', () => {
    // Derived: 24 columns for 60 K are 0.4 a kelvin: 4, 12 and 24 columns.
    const [bars = []] = barsOf([10, 20, 30]);
    expect(bars.slice(1).map(ends)).toEqual([
      [0, 4],
      [4, 12],
      [12, 24],
      [0, 24],
    ]);
  });

  it('has one scale for all parts', () => {
    const [long = [], short = []] = barsOf([60], [15]);
    expect([long.at(-1), short.at(-1)].map((bar = '') => bar.length)).toEqual([24, 6]);
  });

  it('goes back where a step cools, and marks what is too small for a bar', () => {
    const [bars = []] = barsOf([60, -30, 0.1]);
    expect(bars.slice(2, 4).map((bar) => ends(bar)[0])).toEqual([12, 12]);
    expect(bars[3]?.trimStart()).toBe('▏');
  });

  it('is empty where nothing is warm or a temperature is none', () => {
    expect(barsOf([0]).flat().join('')).toBe('');
    expect(barsOf([Number.NaN, 3]).flat().join('')).toBe('');
  });
});
