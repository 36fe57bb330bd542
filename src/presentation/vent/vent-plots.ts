import { inUnit, usualUnit } from '../../quantities/units.ts';
import type { VentAnswer } from '../../questions/vent/vent.ts';
import type { VentPoint } from '../../questions/vent/vent-curve.ts';
import { figure } from '../figures.ts';
import { type PlotPoint, plot } from '../plot/plot.ts';
import { isTellable } from '../tellable.ts';

/** Rows of the field of a plot, and its columns where there is no terminal. */
const ROWS = 11;
const COLUMNS = 80;
/** Widest plot [columns]: beyond it curves only get flat. */
const WIDEST = 100;
/** Below this share of the flow temperatures leave every scale [-]. */
const HOTTEST = 0.3;
const SQUARE_CENTIMETRES = 1e4;

/** Something on the curve that has a name. */
interface Marked {
  readonly mark: string;
  readonly words: string;
  readonly point: Pick<VentPoint, 'area' | 'flow' | 'temperature'>;
}

function markedOn({ now, candidates, curve }: VentAnswer): readonly Marked[] {
  const [best] = candidates;
  return [
    ...(curve.knee ? [{ mark: 'K', words: 'knee', point: curve.knee }] : []),
    ...(best ? [{ mark: '1', words: 'pattern 1', point: best }] : []),
    ...(now ? [{ mark: 'N', words: 'now', point: now }] : []),
  ];
}

function onePlot(
  answer: VentAnswer,
  points: readonly VentPoint[],
  width: number,
  yLabel: string,
  heightOf: (point: Marked['point']) => number,
): readonly string[] {
  const { knee } = answer.curve;
  const end = points.at(-1)?.area ?? 0;
  const place = (point: Marked['point'], mark?: string): PlotPoint => ({
    x: point.area * SQUARE_CENTIMETRES,
    y: heightOf(point),
    ...(mark === undefined ? {} : { mark }),
  });
  const marked = markedOn(answer).filter(({ point }) => point.area <= end);
  return plot(
    [
      { name: '', mark: '', points: points.map((point) => place(point)) },
      ...marked.map(({ mark, words, point }) => ({ name: words, mark, points: [place(point, mark)] })),
    ],
    {
      width: Math.min(WIDEST, width),
      height: ROWS,
      xLabel: 'free area, cm²',
      yLabel,
      ...(knee ? { uprights: [knee.area * SQUARE_CENTIMETRES] } : {}),
    },
  );
}

/**
 * Flow, and the temperature nearest to its limit, against free area.
 *
 * @param answer to the question
 * @param width of the terminal [columns]; undefined if there is none
 */
export function ventPlots(answer: VentAnswer, width: number = COLUMNS): readonly (readonly string[])[] {
  const open = figure('flow', answer.open.flow);
  const { points } = answer.curve;
  const flow = onePlot(answer, points, width, `flow, m³/h (${open} with nothing in the way)`, (point) =>
    inUnit(usualUnit('flow'), point.flow),
  );
  if (answer.open.subject === undefined) return [flow];
  const heat = onePlot(
    answer,
    points.filter(({ share, temperature = 0 }) => share >= HOTTEST && isTellable(temperature)),
    width,
    'temperature nearest to its limit, °C',
    ({ temperature }) => inUnit(usualUnit('temperature'), temperature ?? Number.NaN),
  );
  return [flow, heat];
}
