import type { Band } from '../../bands/band.ts';
import type { VentAnswer } from '../../questions/vent/vent.ts';
import type { VentSure } from '../../questions/vent/vent-sure.ts';
import { levels, probability } from '../bands/band-words.ts';
import { type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { type FigureName, figure, NONE, unitOf } from '../figures.ts';
import { limited } from '../standing-out.ts';
import { MOST_TOLD } from '../tellable.ts';

interface Row {
  readonly name: string;
  readonly sure: VentSure | null;
}

function isTold({ low, high }: Band, name: FigureName): boolean {
  const far = name === 'kelvins' ? MOST_TOLD : Number.POSITIVE_INFINITY;
  return [low, high].every((end) => Math.abs(end) < far);
}

/** The ends of a band, in words. */
function ends(band: Band | undefined, name: FigureName): string {
  return band && isTold(band, name) ? `${figure(name, band.low)} to ${figure(name, band.high)}` : NONE;
}

function bandColumn(
  head: string,
  name: FigureName,
  priority: number,
  rows: readonly Row[],
  bandOf: (sure: VentSure) => Band | undefined,
): Column {
  return numberColumn(head, unitOf(name).name, priority, rows, ({ sure }) =>
    ends(sure ? bandOf(sure) : undefined, name),
  );
}

/**
 * How sure the best pattern is, and the opening as it is: a row each.
 *
 * @param answer to the question
 */
export function sureColumns({ sure }: VentAnswer): readonly Column[] {
  const rows: readonly Row[] = [
    { name: 'pattern 1', sure: sure.best },
    { name: 'opening as it is', sure: sure.asItIs },
  ];
  return [
    textColumn('Nine times in ten', KEEP + 4, rows, ({ name }) => name),
    bandColumn('Flow', 'flow', 50, rows, ({ flow }) => flow),
    bandColumn('Margin', 'kelvins', KEEP + 1, rows, ({ margin }) => margin),
    numberColumn('Level', '', KEEP + 2, rows, (row) => (row.sure ? levels(row.sure.level) : NONE)),
    numberColumn('Limits hold', '', KEEP + 3, rows, ({ sure: found }) =>
      found?.holding === undefined ? NONE : probability(found.holding),
    ),
  ];
}

/** What the hottest limit is on, in words. */
function whose(sure: VentSure | null): readonly string[] {
  return sure?.of && sure.subject !== undefined ? [limited({ of: sure.of, part: sure.subject })] : [];
}

/**
 * What those rows mean; nothing where nothing has a limit.
 *
 * @param answer to the question
 */
export function sureLegend({ task, sure }: VentAnswer): readonly string[] {
  const { best, asItIs } = sure;
  const subjects = [...new Set([best, asItIs].flatMap(whose))];
  if (subjects.length === 0) return [];
  return [
    `Margin: of ${subjects.join(' or ')}, the hottest by its limit. Limits hold: how likely all do in ${task.duty.id} at these speeds, whatever margin is asked.`,
  ];
}
