import { anySi } from '../../quantities/value-range.ts';
import type { BuildState } from '../../questions/build-state.ts';
import type { Axis, Sweep } from '../../questions/sweep.ts';
import type { SweepPoint } from '../../questions/sweep-point.ts';
import { type CsvCell, toCsv } from '../csv.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { kelvinData } from '../tellable.ts';
import { shownDuty } from './question-columns.ts';
import { orNull, stateData } from './state-data.ts';
import { SURE_HEADS, sureCells, sureData } from './sweep-sure.ts';

/** A value of an axis in SI; null if it is no single quantity. */
function siAt({ quantity, range }: Axis, position: number): number | null {
  return anySi(range.textAt(position), quantity.difference)?.value ?? null;
}

function unitOf({ quantity, range }: Axis): string {
  return anySi(range.textAt(0), quantity.difference)?.unit ?? '';
}

function valueData(axis: Axis, position: number): Json {
  return { text: axis.range.textAt(position), value_SI: siAt(axis, position) };
}

/**
 * A sweep as a document.
 *
 * @param title of the scenario
 * @param swept the answer
 * @param meta version, command and warnings
 */
export function sweepDocument(
  title: string,
  { axes, points, crossings, banks }: Sweep,
  meta: Meta,
): Document {
  const result = {
    title,
    quantities: axes.map((axis) => ({
      quantity: axis.quantity.name,
      unit_SI: unitOf(axis),
      spacing: axis.range.spacing,
    })),
    banks: banks.map(({ place, fan, count }) => ({ place, fan, count })),
    points: points.map(({ positions, state, sure, build }) => ({
      values: axes.map((axis, index) => valueData(axis, positions[index] ?? 0)),
      state: typeof state === 'string' ? null : stateData(state),
      reason: typeof state === 'string' ? state : null,
      sure: sureData(sure),
      ...(build ? { options: build } : {}),
    })),
    crossings: crossings.map(({ position, adequateAbove }) => ({
      ...(axes[0] ? { value: valueData(axes[0], position) } : {}),
      adequateAbove,
    })),
  };
  return documentOf(result, meta);
}

function cellsOf(state: BuildState, banks: number): readonly CsvCell[] {
  const shown = shownDuty(state);
  return [
    state.adequate,
    orNull(state.level),
    orNull(state.loudest),
    kelvinData(state.tightest?.margin),
    state.tightest?.subject ?? null,
    state.tightest?.duty ?? null,
    orNull(shown?.flow),
    orNull(state.fanPower),
    ...Array.from({ length: banks }, (_, index) => orNull(shown?.ratios[index])),
    null,
  ];
}

/**
 * A sweep as comma-separated values, in SI. Flow and speeds are those of the loudest duty.
 *
 * @param swept the answer
 */
export function sweepCsv({ axes, points, banks }: Sweep): string {
  const heads = [
    ...axes.flatMap((axis) => [axis.quantity.name, `${axis.quantity.name} [${unitOf(axis) || '1'}]`]),
    'adequate',
    'mean level [dB(A)]',
    'loudest level [dB(A)]',
    'least margin [K]',
    'tightest',
    'tightest in',
    'flow [m3/s]',
    'fan power [W]',
    ...banks.map(({ place }) => `speed of ${place} [1]`),
    'reason',
    ...SURE_HEADS,
  ];
  const rows = points.map(({ positions, state, sure }: SweepPoint): readonly CsvCell[] => [
    ...axes.flatMap((axis, index) => [
      axis.range.textAt(positions[index] ?? 0),
      siAt(axis, positions[index] ?? 0),
    ]),
    ...(typeof state === 'string'
      ? [...Array.from({ length: 8 + banks.length }, () => null), state]
      : cellsOf(state, banks.length)),
    ...sureCells(sure),
  ]);
  return toCsv(heads, rows);
}
