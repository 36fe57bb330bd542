import type { Fraction, Metres } from '../../quantities/dimensions.ts';

/** Least and greatest value that is believed. */
export type Range = readonly [least: number, greatest: number];

/** What is believed of fans with frames of one depth. */
export interface FanClass {
  /** Greatest depth of the frame [m]. */
  readonly deepest: Metres;
  /** Free delivery over annulus and tip speed, Q0/(A·U) [-]. */
  readonly flow: Range;
  /** Shut-off pressure over the head of the tip speed, p0/(½ρU²) [-]. */
  readonly pressure: Range;
}

/**
 * What axial fans of small frames reach, by the depth of the frame. Common practice, no source; deep frames have
 * wider blades and give more of both. One published point for the order of the flow: an axial fan with guide vanes
 * and a hub of 0.44 has a flow coefficient of 0.285 at its design point, left of free delivery (Scientific Reports
 * 12, 2022, s41598-022-19530-9, table 1). Each range is wider than the fans of one maker are, and narrower than a
 * factor of 9.8, so that millimetres of water taken for pascals always show.
 */
const FAN_CLASSES: readonly FanClass[] = [
  { deepest: 0.0125, flow: [0.13, 0.34], pressure: [0.12, 0.5] },
  { deepest: 0.0175, flow: [0.17, 0.42], pressure: [0.14, 0.6] },
  { deepest: 0.0225, flow: [0.2, 0.5], pressure: [0.18, 0.75] },
  { deepest: 0.027, flow: [0.22, 0.55], pressure: [0.2, 0.9] },
  { deepest: Number.POSITIVE_INFINITY, flow: [0.24, 0.6], pressure: [0.25, 1.5] },
];

/** Level at 1 m less 55 lg of the tip speed over 10 m/s [dB(A)] that is believed. Common practice, no source. */
export const NOISE_RANGE: Range = [10, 42];

/** Blade circle over the side of the frame [-]. Common practice, no source. */
const ROTOR_SHARE: Fraction = 0.94;
/** Hub over blade circle [-]. Common practice, no source. */
const HUB_SHARE: Fraction = 0.44;
/** The same of the smallest frames, whose motors do not shrink with them [-]. Common practice, no source. */
const SMALL_HUB_SHARE: Fraction = 0.5;
/** Side of the frame up to which a fan is small in this sense [m]. */
const SMALL_FRAME: Metres = 0.05;
/** Density of the air that curves refer to [kg/m³]. */
const DENSITY = 1.2;
/** Tip speed that noise is referred to [m/s], and rise per decade of it [dB]. */
const NOISE_SPEED = 10;
const NOISE_EXPONENT = 55;

/** What the coefficients of a fan are made of, in SI. */
export interface FanSpeed {
  readonly size: Metres;
  readonly depth: Metres;
  /** Full speed [1/s]. */
  readonly speed: number;
}

/**
 * The class of a fan.
 *
 * @param depth of its frame [m], > 0
 */
export function classOf(depth: Metres): FanClass {
  const found = FAN_CLASSES.find(({ deepest }) => depth <= deepest) ?? FAN_CLASSES.at(-1);
  if (!found) throw new Error('there are no classes of fans');
  return found;
}

function tipSpeed({ size, speed }: FanSpeed): number {
  return Math.PI * ROTOR_SHARE * size * speed;
}

/**
 * Flow that makes a flow coefficient of 1 [m³/s].
 *
 * @param fan frame and full speed
 */
export function flowScale(fan: FanSpeed): number {
  const circle = ROTOR_SHARE * fan.size;
  const hub = fan.size <= SMALL_FRAME ? SMALL_HUB_SHARE : HUB_SHARE;
  return (Math.PI / 4) * circle ** 2 * (1 - hub ** 2) * tipSpeed(fan);
}

/**
 * Pressure that makes a pressure coefficient of 1 [Pa].
 *
 * @param fan frame and full speed
 */
export function pressureScale(fan: FanSpeed): number {
  return 0.5 * DENSITY * tipSpeed(fan) ** 2;
}

/**
 * What the noise of a fan is without what its tip speed makes of it [dB(A) at 1 m].
 *
 * @param fan frame and the speed of the rating
 * @param level at 1 m [dB(A)]
 */
export function noiseConstant(fan: FanSpeed, level: number): number {
  return level - NOISE_EXPONENT * Math.log10(tipSpeed(fan) / NOISE_SPEED);
}

/**
 * Whether a value lies in a range.
 *
 * @param value any
 * @param range both ends belong to it
 */
export function within(value: number, [least, greatest]: Range): boolean {
  return value >= least && value <= greatest;
}
