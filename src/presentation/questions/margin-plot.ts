import { inUnit, usualUnit } from '../../quantities/units.ts';
import type { MarginCell, MarginMatrix } from '../../questions/margin/margin.ts';
import { plot } from '../plot/plot.ts';

const PLOT_ROWS = 12;
const WIDEST_PLOT = 72;

/** Whether two cells differ in nothing but the room. */
function sameBut({ altitude, dust, dead, slower }: MarginCell, other: MarginCell): boolean {
  return altitude === other.altitude && dust === other.dust && dead === other.dead && slower === other.slower;
}

/**
 * Margin over the room temperature, as drawn and under the other conditions of the worst cell; where the first limit is
 * met, the curve passes the dotted upright.
 *
 * @param found the matrix
 * @param width columns of the terminal; absent if there is none
 * @returns an empty line and the picture; no lines if there is one room temperature only
 */
export function marginPlot(
  { cells, worst, held }: MarginMatrix,
  width: number | undefined,
): readonly string[] {
  const degrees = usualUnit('temperature');
  const [drawn] = cells;
  const least = cells[worst];
  if (!drawn || !least) return [];
  const lines = sameBut(drawn, least) ? [drawn] : [drawn, least];
  const series = lines.map((line, index) => ({
    name: index === 0 ? 'as drawn' : 'the worst',
    mark: index === 0 ? '●' : '○',
    points: cells
      .filter((cell) => sameBut(cell, line) && Number.isFinite(cell.margin))
      .map(({ room, margin }) => ({ x: inUnit(degrees, room), y: margin }))
      .toSorted((one, other) => one.x - other.x),
  }));
  const rooms = new Set(series.flatMap(({ points }) => points.map(({ x }) => x)));
  if (rooms.size < 2) return [];
  const { asDrawn } = held;
  const met = typeof asDrawn.atSet === 'number' ? [inUnit(degrees, asDrawn.atSet)] : [];
  const [low, high] = [Math.min(...rooms), Math.max(...rooms)];
  const shown = met.filter((room) => room > low && room < high);
  const picture = plot(series, {
    width: Math.min(width ?? WIDEST_PLOT, WIDEST_PLOT),
    height: PLOT_ROWS,
    xLabel: `room, ${degrees.name}`,
    yLabel: 'margin, K',
    uprights: shown,
    ...(shown.length > 0 ? { legend: ['┊ where the first limit is met as drawn'] } : {}),
  });
  return ['', ...picture];
}
