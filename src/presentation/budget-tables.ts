import type { BudgetLine, DutyOutcome, LegOutcome, PartOutcome } from '../enclosure/outcome.ts';
import type { Kelvins } from '../quantities/dimensions.ts';
import { type PrintedBudget, printBudget, printRise } from './budget.ts';
import { type Cell, type Column, numberColumn, strong, textColumn } from './column.ts';
import { KEEP } from './column-fit.ts';
import { figure, fixed, levelText, quantity } from './figures.ts';
import { isTellable } from './tellable.ts';
import { waterfall } from './waterfall.ts';

/** Loop gain from which on it is told [-]. */
const TELLING_GAIN = 0.005;

/** The rise of a part that is beyond all use, as one step. */
const BEYOND: readonly BudgetLine[] = [{ label: 'runs away, or no air moves', amount: 0 }];

/** The same as it is printed. */
function printBeyond(room: Kelvins): PrintedBudget {
  const most = figure('temperature', Number.MAX_VALUE);
  const first = { label: 'room', amount: figure('temperature', room) };
  return { lines: [first, ...BEYOND.map(({ label }) => ({ label, amount: most }))], total: most };
}

/** Where the degrees of each part come from: from the room up to the part. */
export function riseTable({ parts, room }: DutyOutcome): readonly Column[] {
  const budgets = parts.map((part) =>
    isTellable(part.temperature) ? printRise(part.rise, room, part.temperature) : printBeyond(room),
  );
  const drawn = parts.map((part) => (isTellable(part.temperature) ? part : { ...part, rise: BEYOND }));
  return [
    textColumn('Part', KEEP, parts, partWords),
    textColumn('Temperature', KEEP + 1, budgets, (budget) => labelled(budget, 'part')),
    amountColumn('°C', budgets),
    textColumn('', 10, waterfall(drawn), (bars) => bars),
  ];
}

function partWords({ part, power, loopGain }: PartOutcome): Cell {
  // Where a part runs away its loop gain is told among the failures, as resistances.
  const gain = loopGain < 1 ? `loop gain ${quantity('percent', loopGain)}` : 'runs away';
  return [strong(part), quantity('power', power), ...(loopGain >= TELLING_GAIN ? [gain] : [])];
}

/** Where the pressure of each leg goes: losses, less what fans give, up to the difference between its ends. */
export function pressureTable({ legs }: DutyOutcome): readonly Column[] {
  const budgets = legs.map((leg) => ({
    ...printBudget('pressure', leg.pressures, leg.pressureDifference),
    ends: `${leg.from} less ${leg.to}`,
  }));
  return [
    textColumn('Leg', KEEP, legs, legWords),
    textColumn('Pressure lost', KEEP + 1, budgets, (budget) => labelled(budget, budget.ends)),
    amountColumn('Pa', budgets),
  ];
}

function legWords({ leg, from, to, flow }: LegOutcome): Cell {
  return [strong(leg), `${from} to ${to}`, quantity('flow', flow)];
}

/** Who makes the noise: levels at the listener and shares that sum to 100 %; how far off, if not all the same. */
export function noiseTable({ sources, level }: DutyOutcome): readonly Column[] {
  const apart = new Set(sources.map(({ distance }) => distance)).size > 1;
  const lines = sources.map(({ source, share }) => ({ label: source, amount: share }));
  const silent = sources.every(({ share }) => share === 0);
  const shares = printBudget('percent', lines, silent ? 0 : 1);
  const rows = shares.lines.map(({ label, amount }, index) => {
    const source = sources[index];
    const kind = source?.kind === 'opening' ? `${label} (opening)` : label;
    const name = source && apart ? `${kind}, ${fixed(source.distance, 2)} m` : kind;
    return { name, level: source ? levelText(source.level) : '', share: amount };
  });
  const sum = {
    name: strong('at the listener'),
    level: strong(levelText(level)),
    share: strong(shares.total),
  };
  const all = [...rows, sum];
  return [
    textColumn('Source of noise', KEEP, all, ({ name }) => name),
    numberColumn('Level', 'dB(A)', KEEP + 2, all, (row) => row.level),
    numberColumn('Share', '%', KEEP + 1, all, (row) => row.share),
  ];
}

/** Where the heat comes from that the air carries out. */
export function heatTable({ heat, heatCarried }: DutyOutcome): readonly Column[] {
  const budgets = [printBudget('power', heat, heatCarried)];
  return [
    textColumn('Heat', KEEP, budgets, (budget) => labelled(budget, 'carried out by the air')),
    amountColumn('W', budgets),
  ];
}

function labelled({ lines }: PrintedBudget, total: string): Cell {
  return [...lines.map(({ label }) => label), strong(`sum: ${total}`)];
}

/** The amounts of budgets; the unit alone is the head. */
function amountColumn(unit: string, budgets: readonly PrintedBudget[]): Column {
  return numberColumn(unit, '', KEEP + 2, budgets, ({ lines, total }) => [
    ...lines.map(({ amount }) => amount),
    strong(total),
  ]);
}
