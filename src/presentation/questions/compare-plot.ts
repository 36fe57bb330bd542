import { inUnit, usualUnit } from '../../quantities/units.ts';
import type { Comparison } from '../../questions/compare/compare.ts';
import { plot } from '../plot/plot.ts';

const MARKS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;
const PLOT_ROWS = 12;
const WIDEST_PLOT = 72;

/**
 * Noise over the flow that the box gets, a mark for each variant in each of the ways to compare: what lies lower and
 * further to the right is better.
 *
 * @param comparison of variants
 * @param width columns of the terminal; absent if there is none
 * @returns no lines if fewer than two points can be drawn
 */
export function comparePlot({ variants }: Comparison, width: number | undefined): readonly string[] {
  const flow = usualUnit('flow');
  const series = variants.slice(0, MARKS.length).map(({ name, full, equalLevel, equalMargin }, index) => ({
    name,
    mark: MARKS[index] ?? '·',
    points: [full, equalLevel, equalMargin]
      .flatMap((state) => (state ? [{ x: inUnit(flow, state.flow), y: state.level }] : []))
      .filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))
      .toSorted((one, other) => one.x - other.x),
  }));
  if (series.flatMap(({ points }) => points).length < 2) return [];
  return plot(series, {
    width: Math.min(width ?? WIDEST_PLOT, WIDEST_PLOT),
    height: PLOT_ROWS,
    xLabel: `flow, ${flow.name}`,
    yLabel: 'noise, dB(A)',
  });
}
