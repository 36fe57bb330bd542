import { leastSquares } from '../numerics/least-squares.ts';
import type { CubicMetresPerSecond, Fraction, KelvinDifference } from '../quantities/dimensions.ts';
import {
  pathFlow,
  READING_DEVIATION,
  resistanceOf,
  type SteadyReading,
  type TestedPath,
} from './panel-test.ts';

/** A steady reading at a speed, with the panel on or off. */
export interface PanelReading extends SteadyReading {
  readonly panel: 'on' | 'off';
  /** Share of full speed [-], > 0. */
  readonly speed: Fraction;
  /** Standard deviation of the temperature [K], > 0; that of an ordinary probe if absent. */
  readonly deviation?: KelvinDifference;
}

/** What is known of a figure before the readings: it holds, or it is a guess, or nothing. */
export type Knowledge =
  | { readonly kind: 'known'; readonly value: number }
  | { readonly kind: 'guess'; readonly value: number; readonly deviation: number }
  | { readonly kind: 'sought'; readonly near: number };

/** What readings are to tell about. */
export interface CalibrationTask {
  readonly path: TestedPath;
  /** Loss of the intake without its panel [Pa·s²/m⁶], ≥ 0. */
  readonly open: number;
  /** Flow of reference of the resistance [m³/s], > 0. */
  readonly at: CubicMetresPerSecond;
  /** What no flow takes away [K/W], > 0 unless known. */
  readonly fixed: Knowledge;
  /** Exponent of the flow [-], > 0. */
  readonly exponent: Knowledge;
}

/** A figure with its band, nine times in ten. */
export interface Estimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Standard deviation in the same unit, to first order. */
  readonly deviation: number;
}

/** What the readings tell. */
export type Calibration =
  | {
      readonly ok: true;
      /** Loss of the intake with its panel [Pa·s²/m⁶]: to be told as a factor, its band is wide. */
      readonly intakeLoss: Estimate;
      /** Flow-dependent resistance at the flow of reference [K/W]. */
      readonly scale: Estimate;
      /** Absent if it was known. */
      readonly fixed?: Estimate;
      /** Absent if it was known. */
      readonly exponent?: Estimate;
      /** Correlation of any two of the figures above, in their order [-]. */
      readonly correlations: readonly (readonly number[])[];
      /** Sum of the squared misses of readings and guesses, in standard deviations [-]. */
      readonly misfit: number;
    }
  | {
      readonly ok: false;
      readonly reason:
        | 'fewer readings and guesses than figures sought'
        | 'the readings do not tell the figures apart'
        | 'no figures fit the readings';
    };

/** Standard deviations to either end of a band that holds nine times in ten. Source: normal distribution. */
const NINE_IN_TEN = 1.644854;
/** Losses of the intake to start from, over that of the rest of the path at the free delivery's half [-]. */
const STARTS = [0.1, 1, 10] as const;

/** A figure as a logarithm, since none can be negative, and where it is kept among the values. */
interface Sought {
  readonly name: 'intakeLoss' | 'scale' | 'fixed' | 'exponent';
  readonly near: number;
  readonly guess?: { readonly value: number; readonly deviation: number };
}

function soughtOf(task: CalibrationTask): readonly Sought[] {
  const further = (['fixed', 'exponent'] as const).flatMap((name): Sought[] => {
    const knowledge = task[name];
    if (knowledge.kind === 'known') return [];
    if (knowledge.kind === 'sought') return [{ name, near: knowledge.near }];
    return [{ name, near: knowledge.value, guess: knowledge }];
  });
  return [{ name: 'intakeLoss', near: 1 }, { name: 'scale', near: 1 }, ...further];
}

type Figures = Readonly<Record<Sought['name'], number>>;

function figuresOf(task: CalibrationTask, sought: readonly Sought[], values: readonly number[]): Figures {
  const figures = {
    intakeLoss: 0,
    scale: 0,
    fixed: presentValue(task.fixed),
    exponent: presentValue(task.exponent),
  };
  sought.forEach(({ name }, index) => {
    figures[name] = Math.exp(values[index] as number);
  });
  return figures;
}

function presentValue(knowledge: Knowledge): number {
  return knowledge.kind === 'sought' ? knowledge.near : knowledge.value;
}

/** By how much a reading is missed, in standard deviations. */
function missed({ path, open, at }: CalibrationTask, figures: Figures, reading: PanelReading): number {
  const flow = pathFlow(path, reading.panel === 'on' ? figures.intakeLoss : open, reading.speed);
  if (flow === undefined) return Number.NaN;
  const resistance = figures.fixed + figures.scale * (flow / at) ** -figures.exponent;
  const found = reading.room + reading.power * resistance;
  return (found - reading.temperature) / (reading.deviation ?? READING_DEVIATION);
}

/** Where to begin: a loss of the intake, and the scale that fits the first reading with it. */
function startFrom(
  task: CalibrationTask,
  sought: readonly Sought[],
  first: PanelReading,
  times: number,
): readonly number[] {
  const middle = 0.5 * task.path.freeDelivery;
  const loss = (times * Math.max(task.path.rest(middle), 1e-3)) / middle ** 2;
  const flow = pathFlow(task.path, first.panel === 'on' ? loss : task.open, first.speed) ?? middle;
  const above = Math.max(0.1 * resistanceOf(first), resistanceOf(first) - presentValue(task.fixed));
  const scale = above * (flow / task.at) ** presentValue(task.exponent);
  return sought.map(({ name, near }) => {
    if (name === 'intakeLoss') return Math.log(loss);
    return Math.log(name === 'scale' ? scale : near);
  });
}

function estimate(logarithm: number, variance: number): Estimate {
  const value = Math.exp(logarithm);
  const deviation = Math.sqrt(variance);
  const factor = Math.exp(NINE_IN_TEN * deviation);
  return { value, low: value / factor, high: value * factor, deviation: value * deviation };
}

/**
 * Loss of an intake, and what of the thermal model is not known, from steady readings with the panel on and off and at
 * several speeds, by least squares.
 *
 * Readings at one configuration tell nothing of the intake; two with the panel on and off tell its loss if all else is
 * known; more speeds tell the resistance that no flow takes away; the exponent hardly ever shows, so that it should be
 * known or a guess.
 *
 * Source: derived; least squares of the temperatures with powers as measured, guesses as further readings of themselves.
 *
 * @param task path, open intake, what is known
 * @param readings steady
 */
export function calibrate(task: CalibrationTask, readings: readonly PanelReading[]): Calibration {
  const sought = soughtOf(task);
  const guesses = sought.filter(({ guess }) => guess !== undefined).length;
  const [first] = readings;
  if (!first || readings.length + guesses < sought.length) {
    return { ok: false, reason: 'fewer readings and guesses than figures sought' };
  }
  const residuals = (values: readonly number[]): readonly number[] => {
    const figures = figuresOf(task, sought, values);
    return [
      ...readings.map((reading) => missed(task, figures, reading)),
      ...sought.flatMap(({ name, guess }) =>
        guess ? [(figures[name] - guess.value) / guess.deviation] : [],
      ),
    ];
  };
  const fits = STARTS.map((times) => leastSquares(residuals, startFrom(task, sought, first, times)));
  const best = fits.reduce((one, other) =>
    other.ok && !(one.ok && one.misfit <= other.misfit) ? other : one,
  );
  if (!best.ok) {
    const apart = fits.every((fit) => fit.ok || fit.reason !== 'undetermined');
    const reason = apart ? 'no figures fit the readings' : 'the readings do not tell the figures apart';
    return { ok: false, reason };
  }
  const { values, covariance, misfit } = best;
  const variance = (index: number) => covariance[index]?.[index] as number;
  const estimates = Object.fromEntries(
    sought.map(({ name }, index) => [name, estimate(values[index] as number, variance(index))]),
  ) as Pick<Extract<Calibration, { ok: true }>, 'intakeLoss' | 'scale' | 'fixed' | 'exponent'>;
  const correlations = covariance.map((row, i) =>
    row.map((value, j) => value / Math.sqrt(variance(i) * variance(j))),
  );
  return { ok: true, ...estimates, correlations, misfit };
}
