import type { BankOutcome } from '../enclosure/outcome.ts';
import type { CurveShape, ShapePoint } from '../fan/curve-shape.ts';
import { inUnit, usualUnit } from '../quantities/units.ts';
import { quantity } from './figures.ts';
import { type PlotPoint, plot } from './plot/plot.ts';
import { wrapped } from './prose.ts';

const ROWS = 14;
/** Widest drawing [columns]: beyond it curves only get flat. */
const WIDEST = 72;
/** Least distance of the two curves that is drawn, as a share of the greatest pressure [-]. */
const APART = 0.03;
const COUNTED = '-';
const WORKING = '●';
const BY_POINTS = '○';

function placed({ flow }: ShapePoint, pressure: number): PlotPoint {
  return { x: inUnit(usualUnit('flow'), flow), y: inUnit(usualUnit('pressure'), pressure) };
}

/**
 * Where the curve counted on leaves the points, so that it can be told from them: dashes close by close, each followed
 * by a gap, so that no line joins them.
 */
function countedPart({ points }: CurveShape): readonly PlotPoint[] {
  const highest = Math.max(...points.map(({ counted }) => counted));
  const apart = ({ counted, raw }: ShapePoint): boolean =>
    raw === undefined || Math.abs(raw - counted) > APART * highest;
  return points.flatMap((point, index) => {
    const next = points[index + 1];
    const here = placed(point, point.counted);
    const gap = { ...here, y: Number.NaN };
    if (!apart(point)) return [gap];
    if (!next || !apart(next)) return [here, gap];
    const there = placed(next, next.counted);
    return [here, gap, { x: (here.x + there.x) / 2, y: (here.y + there.y) / 2 }, gap];
  });
}

function drawing(shape: CurveShape, width: number | undefined): readonly string[] {
  const { points, working, peakFlow } = shape;
  // The two marks need a row each.
  const row = Math.max(...points.map(({ counted }) => counted)) / ROWS;
  const lifted = working.raw !== undefined && working.raw - working.counted > row;
  return plot(
    [
      { name: '', mark: '', points: points.map((point) => placed(point, point.raw ?? Number.NaN)) },
      { name: 'counted on instead', mark: COUNTED, points: countedPart(shape) },
      ...(lifted
        ? [{ name: 'by the points', mark: BY_POINTS, points: [placed(working, working.raw ?? Number.NaN)] }]
        : []),
      { name: 'works here', mark: WORKING, points: [placed(working, working.counted)] },
    ],
    {
      width: Math.min(WIDEST, width ?? WIDEST),
      height: ROWS,
      xLabel: `flow of one fan, ${usualUnit('flow').name}`,
      yLabel: `pressure, ${usualUnit('pressure').name}`,
      ...(peakFlow > 0 ? { uprights: [placed({ flow: peakFlow, counted: 0 }, 0).x] } : {}),
    },
  );
}

function title({ place, fan }: BankOutcome, { peakFlow, working }: CurveShape): string {
  const where = `${quantity('flow', working.flow)}, ${quantity('pressure', working.counted)}`;
  const last = peakFlow > 0 ? `; last peak, dotted, at ${quantity('flow', peakFlow)}` : '';
  return `${place} (${fan}) on its curve at this speed: ${where}${last}`;
}

/**
 * The curve of a bank that runs stalled, drawn with characters: the points as given as a line, the falling curve that
 * is counted on where it leaves them, the last peak as a dotted upright, and the working point.
 *
 * @param bank at its working point
 * @param width of the terminal [columns]; undefined if there is none
 * @returns lines, the first a title; none if the bank does not run stalled
 */
export function stallDrawing(bank: BankOutcome, width: number | undefined): readonly string[] {
  if (!bank.shape) return [];
  return [...wrapped(title(bank, bank.shape), width), ...drawing(bank.shape, width)];
}
