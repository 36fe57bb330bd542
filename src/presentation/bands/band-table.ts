import type { Band } from '../../bands/band.ts';
import type { DutyBands } from '../../bands/build-bands.ts';
import { type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { type FigureName, figure, NONE, unitOf } from '../figures.ts';
import { limited } from '../standing-out.ts';

interface Line {
  readonly what: string;
  readonly figure: FigureName;
  readonly band: Band;
}

function linesOf({ level, margins, parts, through, legs, fanPower }: DutyBands): readonly Line[] {
  return [
    { what: 'level', figure: 'level', band: level },
    ...margins.map(
      ({ subject, of, margin }): Line => ({
        what: `margin of ${limited({ of, part: subject })}`,
        figure: 'kelvins',
        band: margin,
      }),
    ),
    ...parts.map(({ part, temperature }): Line => ({ what: part, figure: 'temperature', band: temperature })),
    { what: 'flow through the box', figure: 'flow', band: through },
    ...(legs.length > 1
      ? legs.map(({ leg, flow }): Line => ({ what: `flow in ${leg}`, figure: 'flow', band: flow }))
      : []),
    { what: 'power of the fans', figure: 'power', band: fanPower },
  ];
}

function shown(name: FigureName, value: number): string {
  return Number.isFinite(value) ? figure(name, value) : NONE;
}

/**
 * Results of a build in one duty with their bands.
 *
 * @param bands of the duty; no rows if absent
 */
export function bandTable(bands: DutyBands | undefined): readonly Column[] {
  const lines = bands ? linesOf(bands) : [];
  const column = (head: string, priority: number, end: keyof Band): Column =>
    numberColumn(head, '', priority, lines, (line) => shown(line.figure, line.band[end]));
  return [
    textColumn('Nine times in ten', KEEP, lines, ({ what }) => what),
    textColumn('', KEEP + 1, lines, (line) => unitOf(line.figure).name),
    column('From', KEEP + 2, 'low'),
    column('Expected', 30, 'expected'),
    column('To', KEEP + 2, 'high'),
  ];
}
