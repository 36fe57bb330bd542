import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PrintedBudget, printBudget, printRise } from '../../src/presentation/budget.ts';

const tenths = (text: string): number => Math.round(Number(text.replaceAll(' ', '')) * 10);
const sumOf = ({ lines }: PrintedBudget): number =>
  lines.reduce((sum, { amount }) => sum + tenths(amount), 0);
const amounts = fc.array(fc.double({ min: -500, max: 500, noNaN: true }), { minLength: 1, maxLength: 8 });
const named = (list: readonly number[]) => list.map((amount, index) => ({ label: `line ${index}`, amount }));

describe('a printed budget', () => {
  it('rounds so that its lines sum to the printed total', () => {
    // 0.14 + 0.14 + 0.14 = 0.42: rounded one by one the lines would sum to 0.3 (derived by hand).
    const budget = printBudget('pressure', named([0.14, 0.14, 0.14]), 0.42);
    expect(budget.lines.map(({ amount }) => amount)).toEqual(['0.2', '0.1', '0.1']);
    expect(budget.total).toBe('0.4');
  });

  it('always sums, with every line within one digit of the exact amount', () => {
    fc.assert(
      fc.property(amounts, (list) => {
        const budget = printBudget(
          'power',
          named(list),
          list.reduce((sum, amount) => sum + amount, 0),
        );
        expect(budget.lines).toHaveLength(list.length);
        expect(sumOf(budget)).toBe(tenths(budget.total));
        budget.lines.forEach(({ amount }, index) => {
          expect(Math.abs(tenths(amount) - (list[index] ?? Number.NaN) * 10)).toBeLessThan(1 + 1e-6);
        });
      }),
      { seed: 21, numRuns: 300 },
    );
  });

  it('says what its lines leave open instead of hiding it', () => {
    const budget = printBudget('power', named([95, 22]), 120);
    expect(budget.lines).toContainEqual({ label: 'not accounted for', amount: '3.0' });
    expect(sumOf(budget)).toBe(1200);
  });

  it('shows shares that sum to a hundred', () => {
    const budget = printBudget('percent', named([1 / 3, 1 / 3, 1 / 3]), 1);
    expect(budget.lines.map(({ amount }) => amount)).toEqual(['34', '33', '33']);
    expect(budget.total).toBe('100');
  });

  it('shows dashes where a number is missing', () => {
    const budget = printBudget('power', named([95, Number.NaN]), 95);
    expect(budget.lines.map(({ amount }) => amount)).toEqual(['–', '–']);
    expect(budget.total).toBe('95.0');
  });
});

describe('a printed rise of temperature', () => {
  it('leads from the room to the part', () => {
    // 26.04 °C + 1.24 K + 31.44 K + 0.03 K = 58.75 °C, by hand; the rises print as 58.8 - 26.0 = 32.8.
    const budget = printRise(named([1.24, 31.44, 0.03]), 299.19, 331.9);
    expect(budget.lines.map(({ amount }) => amount)).toEqual(['26.0', '+1.3', '+31.5', '+0.0']);
    expect(budget.total).toBe('58.8');
  });

  it('always sums', () => {
    const room = fc.double({ min: 250, max: 330, noNaN: true });
    fc.assert(
      fc.property(room, amounts, (kelvins, list) => {
        const temperature = kelvins + list.reduce((sum, amount) => sum + amount, 0);
        const budget = printRise(named(list), kelvins, temperature);
        expect(budget.lines).toHaveLength(list.length + 1);
        expect(sumOf(budget)).toBe(tenths(budget.total));
      }),
      { seed: 22, numRuns: 300 },
    );
  });
});
