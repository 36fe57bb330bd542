import type { Random } from '../search/random.ts';

/** Side and depth of a frame [mm]. */
export interface Frame {
  readonly size: number;
  readonly depth: number;
}

/** What fans of one line share: they differ in speed only. */
export interface FanLine {
  readonly frame: Frame;
  /** Free delivery over annulus and tip speed, shut-off over ½ρU² [-]. */
  readonly flowCoefficient: number;
  readonly pressureCoefficient: number;
  /** Level at 1 m less 55 lg of the tip speed over 10 m/s [dB]. */
  readonly noiseConstant: number;
  /** Points of the curve as shares of free delivery and of shut-off pressure [-]. */
  readonly curve: readonly (readonly [flow: number, pressure: number])[];
  /** Air power at best over electrical power [-]. */
  readonly efficiency: number;
  readonly blades: number;
  /** Tip speeds of its members [m/s]. */
  readonly tipSpeeds: readonly number[];
  /** What its quality adds to the price [-]. */
  readonly dearness: number;
}

type Range = readonly [low: number, high: number];

/** Character of the frames of one depth; an assumption, no source, within what test/catalog calls plausible. */
interface DepthClass {
  readonly depth: number;
  readonly flowCoefficient: Range;
  readonly pressureCoefficient: Range;
  readonly noiseConstant: Range;
}

const depthClasses: readonly DepthClass[] = [
  { depth: 10, flowCoefficient: [0.15, 0.23], pressureCoefficient: [0.19, 0.29], noiseConstant: [20, 23.5] },
  { depth: 15, flowCoefficient: [0.21, 0.29], pressureCoefficient: [0.21, 0.34], noiseConstant: [21, 26] },
  {
    depth: 20,
    flowCoefficient: [0.23, 0.33],
    pressureCoefficient: [0.27, 0.41],
    noiseConstant: [24.5, 29.5],
  },
  {
    depth: 25,
    flowCoefficient: [0.27, 0.39],
    pressureCoefficient: [0.29, 0.47],
    noiseConstant: [25.5, 30.5],
  },
  {
    depth: 38,
    flowCoefficient: [0.29, 0.39],
    pressureCoefficient: [0.44, 0.78],
    noiseConstant: [27.5, 30.5],
  },
];

/** Steep blades and much flow are paid for with noise: share of the noise that is theirs, the rest is luck [-]. */
const PRESSURE_WEIGHT = 0.4;
const FLOW_WEIGHT = 0.25;

const SLOWEST_TIP: Range = [5, 8];
const TIP_STEP: Range = [1.2, 1.4];
const FASTEST_TIP = 19;

/** Straight for no bulge, a parabola for the largest [-]. */
function pressureShare(flow: number, bulge: number): number {
  return (1 - flow) * (1 + bulge * flow);
}

function steadyCurve(random: Random): FanLine['curve'] {
  const bulge = random.between(-0.1, 0.6);
  return Array.from({ length: 8 }, (_, index) => [index / 7, pressureShare(index / 7, bulge)] as const);
}

/** Deep frames stall: the pressure dips and rises once. */
function stallingCurve(random: Random): FanLine['curve'] {
  const bulge = random.between(0.1, 0.6);
  const dip = random.between(0.32, 0.44);
  const behind = dip + 0.09;
  const top = pressureShare(behind, bulge);
  const rise = random.between(0.026, 0.055);
  const before = [0, 0.11, 0.21].map((flow) => [flow, pressureShare(flow, bulge)] as const);
  const after = [0.64, 0.76, 0.88, 1].map((flow) => [flow, pressureShare(flow, bulge)] as const);
  return [...before, [dip, top - rise], [behind, top], ...after];
}

function tipSpeedsOf(random: Random): readonly number[] {
  const step = random.between(...TIP_STEP);
  const slowest = random.between(...SLOWEST_TIP);
  const members = random.whole(2, 5);
  return Array.from({ length: members }, (_, index) => slowest * step ** index).filter(
    (speed) => speed <= FASTEST_TIP,
  );
}

/**
 * Invents a line of axial fans. Louder lines give more pressure or more flow on the whole, but not always, so that
 * there is something to choose.
 *
 * @param random where the numbers come from
 * @param frame side and depth [mm], the depth one of 10, 15, 20, 25, 38
 */
export function inventLine(random: Random, frame: Frame): FanLine {
  const known = depthClasses.find(({ depth }) => depth === frame.depth);
  if (!known) throw new RangeError(`no fans of ${frame.depth} mm depth are invented here`);
  const [pressure, flow, luck] = [random.unit(), random.unit(), random.unit()];
  const within = ([low, high]: Range, share: number): number => low + (high - low) * share;
  const loudness =
    PRESSURE_WEIGHT * pressure + FLOW_WEIGHT * flow + (1 - PRESSURE_WEIGHT - FLOW_WEIGHT) * luck;
  return {
    frame,
    flowCoefficient: within(known.flowCoefficient, flow),
    pressureCoefficient: within(known.pressureCoefficient, pressure),
    noiseConstant: within(known.noiseConstant, loudness),
    curve: frame.depth >= 25 ? stallingCurve(random) : steadyCurve(random),
    efficiency: random.between(0.08, 0.22),
    blades: random.pick([5, 7, 7, 9, 11]),
    tipSpeeds: tipSpeedsOf(random),
    dearness: random.between(0, 8) + 6 * (1 - luck),
  };
}
