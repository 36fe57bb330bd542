import { lostWords } from '../enclosure/bank-words.ts';
import type { BankOutcome } from '../enclosure/outcome.ts';
import { type Cell, type Column, numberColumn, textColumn } from './column.ts';
import { KEEP } from './column-fit.ts';
import { figure } from './figures.ts';

/** What stands in a place other than fans, where there was a choice. */
export interface ChosenElement {
  readonly place: string;
  readonly holds: string;
}

/** What is shown in the places of one row: fans first. */
export interface Occupants {
  readonly banks: readonly BankOutcome[];
  readonly chosen: readonly ChosenElement[];
}

/** Stands behind a fan whose curve rests on its box figures. */
const SYNTHESISED = '*';
/** Stands behind a fan that runs stalled. */
const STALLED = '!';

/** Fans of a bank in words, with their marks. */
export function fansOf(bank: BankOutcome): string {
  const marks = `${bank.synthesisedCurve ? SYNTHESISED : ''}${bank.stalled ? STALLED : ''}`;
  const { count, lost } = bank;
  if (!lost) return `${bank.fan} x${count}${marks}`;
  return `${bank.fan} x${count + lost.dead + lost.missing}${marks}, ${lostWords(lost)}`;
}

/**
 * Columns that say what stands where and how fast it runs, one line a place.
 *
 * @param rows occupants of each row of the table
 */
export function bankColumns(rows: readonly Occupants[]): readonly Column[] {
  const lines = (bank: (bank: BankOutcome) => string, chosen: (element: ChosenElement) => string) => {
    return (row: Occupants): Cell => [...row.banks.map(bank), ...row.chosen.map(chosen)];
  };
  const none = (): string => '';
  const choices = rows.some(({ chosen }) => chosen.length > 0);
  const headers = rows.some(({ banks }) => banks.some(({ header }) => header !== undefined));
  return [
    textColumn('Place', KEEP, rows, lines(placeOf, placeOf)),
    textColumn(choices ? 'Fan, choice' : 'Fan', KEEP + 3, rows, lines(fansOf, holdsOf)),
    ...(headers ? [textColumn('Header', 55, rows, lines(headerOf, none))] : []),
    numberColumn('Speed', '%', KEEP + 2, rows, lines(percentOf, none)),
    numberColumn('', 'rpm', 60, rows, lines(rpmOf, none)),
  ];
}

/** Legend for the marks that occur in some rows. */
export function markLegend(rows: readonly Occupants[]): readonly string[] {
  const banks = rows.flatMap((row) => row.banks);
  return [
    ...(banks.some((bank) => bank.synthesisedCurve)
      ? [`${SYNTHESISED} pressure curve made up from the two figures on the box.`]
      : []),
    ...(banks.some((bank) => bank.stalled) ? [`${STALLED} runs stalled.`] : []),
  ];
}

function placeOf({ place }: { readonly place: string }): string {
  return place;
}

function headerOf({ header = '' }: BankOutcome): string {
  return header;
}

function holdsOf({ holds }: ChosenElement): string {
  return holds;
}

function percentOf(bank: BankOutcome): string {
  return figure('percent', bank.ratio);
}

function rpmOf(bank: BankOutcome): string {
  return figure('rpm', bank.speed);
}
