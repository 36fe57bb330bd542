import type { Band } from '../../bands/band.ts';
import { buildBands, type MarginBand } from '../../bands/build-bands.ts';
import { inOneDuty } from '../../bands/one-duty.ts';
import { responseOf } from '../../bands/response.ts';
import type { Element } from '../../elements/element.ts';
import type { LimitKind } from '../../enclosure/enclosure.ts';
import type { Fraction } from '../../quantities/dimensions.ts';
import { familyOpening, type HoleFamily } from './hole-family.ts';
import type { VentPoint } from './vent-curve.ts';
import { machineWith, speedsOf, ventState } from './vent-state.ts';
import type { VentTask } from './vent-task.ts';

/** How sure what an opening does is, the fans at the speeds of the task. */
export interface VentSure {
  /** Through the opening, at its own density; below nothing it runs the other way [m³/s]. */
  readonly flow: Band;
  /** How far the hottest limit stays below, what is asked beyond included [K]; absent if nothing has a limit. */
  readonly margin?: Band;
  /** Whose limit it is, and of what sort. */
  readonly subject?: string;
  readonly of?: LimitKind;
  /** At the listener [dB]. */
  readonly level: Band;
  /** Probability that every limit of the duty holds, without the asked margin [-]; absent if nothing has a limit. */
  readonly holding?: Fraction;
}

/** The band of something that is a number of times as large. */
function scaled({ low, expected, high }: Band, factor: number): Band {
  const [one, other] = [factor * low, factor * high];
  return { low: Math.min(one, other), expected: factor * expected, high: Math.max(one, other) };
}

function hottest(margins: readonly MarginBand[]): MarginBand | undefined {
  return margins.reduce<MarginBand | undefined>(
    (least, each) => (least && least.margin.expected <= each.margin.expected ? least : each),
    undefined,
  );
}

/** What is left of a margin beyond the one that is asked. */
function beyond({ low, expected, high }: Band, asked: number): Band {
  return { low: low - asked, expected: expected - asked, high: high - asked };
}

/**
 * Bands of what comes of an element in the opening's place, in the duty that is looked at.
 *
 * @param task the opening
 * @param element to stand there
 * @returns null if air and heat have no solution
 */
export function ventSure(task: VentTask, element: Element): VentSure | null {
  const { enclosure, duty, place } = task;
  const state = ventState(task, element);
  if (!state) return null;
  const only = { ...task, enclosure: inOneDuty(enclosure, duty) };
  const response = responseOf(machineWith(only, element), [speedsOf(task)]);
  if (typeof response === 'string') return null;
  const [bands] = buildBands(response).duties;
  const flow = bands?.legs[enclosure.legs.findIndex(({ through }) => through.includes(place))]?.flow;
  if (!bands || !flow) return null;
  const tight = hottest(bands.margins);
  return {
    // A leg tells its flow as it enters; the share of it that is more or less in the opening is the same in all its band.
    flow: flow.expected === 0 ? flow : scaled(flow, state.flow / flow.expected),
    ...(tight
      ? {
          margin: beyond(tight.margin, enclosure.margin),
          subject: tight.subject,
          of: tight.of,
          holding: bands.holding,
        }
      : {}),
    level: bands.level,
  };
}

/**
 * The same with what stands in the opening's place now, whatever it is.
 *
 * @param task the opening
 * @returns null if air and heat have no solution
 */
export function sureAsItIs(task: VentTask): VentSure | null {
  const place = task.enclosure.places[task.place];
  const element = place?.kind === 'element' ? place.options[task.build[task.place] ?? 0]?.element : undefined;
  return element ? ventSure(task, element) : null;
}

/**
 * The same for each point of the curve: some dozens of times the work of one.
 *
 * @param task the opening
 * @param family of holes of the curve
 * @param points of the curve
 */
export function curveSureness(
  task: VentTask,
  family: HoleFamily,
  points: readonly VentPoint[],
): readonly (VentSure | null)[] {
  return points.map(({ area }) => ventSure(task, familyOpening(family, area)));
}
