import { inUnit, usualUnit } from '../../quantities/units.ts';
import type { AirNeedTable } from '../../questions/air-need.ts';
import { quantity } from '../figures.ts';
import { plot } from '../plot/plot.ts';

const MARKS = ['·', '●', '+', '○'] as const;
const PLOT_ROWS = 10;
const WIDEST_PLOT = 72;

/**
 * Flow over what the air may get warmer, a curve for each heat of the table.
 *
 * @param around the table
 * @param width columns of the terminal; absent if there is none
 */
export function airPlot({ loads, needs }: AirNeedTable, width: number | undefined): readonly string[] {
  const flow = usualUnit('flow');
  const series = loads.map((load, index) => ({
    name: quantity('power', load),
    mark: MARKS[index % MARKS.length] ?? '·',
    points: (needs[index] ?? []).map((need) => ({ x: need.rise, y: inUnit(flow, need.flow) })),
  }));
  return plot(series, {
    width: Math.min(width ?? WIDEST_PLOT, WIDEST_PLOT),
    height: PLOT_ROWS,
    xLabel: 'rise of the air, K',
    yLabel: `flow, ${flow.name}`,
  });
}
