import type { BudgetLine } from '../enclosure/outcome.ts';
import type { Kelvins } from '../quantities/dimensions.ts';
import { inUnit } from '../quantities/units.ts';
import { apportion } from './apportion.ts';
import { decimalsOf, type FigureName, fixed, NONE, unitOf } from './figures.ts';

/** A line of a budget as it is printed. */
interface PrintedLine {
  readonly label: string;
  readonly amount: string;
}

/** A budget whose printed lines sum to its printed total. */
export interface PrintedBudget {
  readonly lines: readonly PrintedLine[];
  readonly total: string;
}

/** Label of what the lines of a budget leave open; it does not occur where the budget is sound. */
const UNACCOUNTED = 'not accounted for';

/**
 * A budget with its numbers rounded such that they visibly sum to the total.
 *
 * @param name how the amounts are shown
 * @param lines of the budget, in SI; if they miss the total by more than one printed digit, a line says so
 * @param total in SI
 */
export function printBudget(name: FigureName, lines: readonly BudgetLine[], total: number): PrintedBudget {
  const decimals = decimalsOf(name);
  const inSteps = (value: number): number => inUnit(unitOf(name), value) * 10 ** decimals;
  const amounts = lines.map(({ amount }) => inSteps(amount));
  const steps = Math.round(inSteps(total));
  return {
    lines: printLines(lines, amounts, inSteps(total), steps, decimals),
    total: fixed(steps / 10 ** decimals, decimals),
  };
}

/**
 * Where the kelvins of a temperature come from, as a budget that begins with the room.
 *
 * @param rise above the room [K]
 * @param room temperature [K]
 * @param temperature found [K]
 * @returns first line and total in °C, the lines between with their sign
 */
export function printRise(rise: readonly BudgetLine[], room: Kelvins, temperature: Kelvins): PrintedBudget {
  const decimals = decimalsOf('temperature');
  const scale = 10 ** decimals;
  const [first, last] = [room, temperature].map((kelvins) =>
    Math.round(inUnit(unitOf('temperature'), kelvins) * scale),
  ) as [number, number];
  const amounts = rise.map(({ amount }) => amount * scale);
  const lines = printLines(rise, amounts, (temperature - room) * scale, last - first, decimals);
  return {
    lines: [
      { label: 'room', amount: fixed(first / scale, decimals) },
      ...lines.map(({ label, amount }) => ({ label, amount: signed(amount) })),
    ],
    total: fixed(last / scale, decimals),
  };
}

/** Lines rounded to sum to a number of steps; all dashes if anything is not finite. */
function printLines(
  lines: readonly BudgetLine[],
  amounts: readonly number[],
  total: number,
  steps: number,
  decimals: number,
): readonly PrintedLine[] {
  if (![...amounts, total].every(Number.isFinite)) return lines.map(({ label }) => ({ label, amount: NONE }));
  const rest = total - amounts.reduce((sum, amount) => sum + amount, 0);
  const open = Math.abs(rest) > 1;
  const labels = lines.map(({ label }) => label).concat(open ? [UNACCOUNTED] : []);
  const rounded = apportion(open ? [...amounts, rest] : amounts, steps);
  return labels.map((label, index) => ({
    label,
    amount: fixed((rounded[index] ?? 0) / 10 ** decimals, decimals),
  }));
}

function signed(amount: string): string {
  return amount.startsWith('-') || amount === NONE ? amount : `+${amount}`;
}
