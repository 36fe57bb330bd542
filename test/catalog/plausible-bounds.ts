import { characterOf, freeDelivery, fullSpeedLevel, shutOff } from './fan-character.ts';
import type { WrittenFan } from './written-fan.ts';

/** Least and greatest value allowed. */
type Bounds = readonly [least: number, greatest: number];

/** What is plausible of fans of one depth. */
interface DepthClass {
  readonly depths: Bounds;
  readonly flowCoefficient: Bounds;
  readonly pressureCoefficient: Bounds;
  readonly noiseConstant: Bounds;
  readonly stalls: boolean;
}

/**
 * Bounds by depth of frame [mm]. Flow coefficient Q0/(A·U), pressure coefficient p0/(½ρU²) and noise
 * constant L - 55 lg(U / 10 m/s) [dB(A) at 1 m], with A the annulus and U the tip speed.
 * Common practice, no source; in absolute terms held by the anchors of the test. One published point for the order
 * of the flow coefficient: a ten-blade axial fan with guide vanes, hub ratio 0.44, has 0.285 at its design
 * point (Scientific Reports 12, 2022, s41598-022-19530-9, table 1), so that free delivery lies above it.
 * A stalled region between 30 and 55 % of free delivery in frames of 25 mm and more: model assumption, no source.
 */
const depthClasses: readonly DepthClass[] = [
  {
    depths: [10, 10],
    flowCoefficient: [0.14, 0.24],
    pressureCoefficient: [0.18, 0.3],
    noiseConstant: [18.5, 25],
    stalls: false,
  },
  {
    depths: [15, 15],
    flowCoefficient: [0.2, 0.3],
    pressureCoefficient: [0.2, 0.35],
    noiseConstant: [19.5, 27.5],
    stalls: false,
  },
  {
    depths: [20, 20],
    flowCoefficient: [0.22, 0.34],
    pressureCoefficient: [0.26, 0.42],
    noiseConstant: [23, 31],
    stalls: false,
  },
  {
    depths: [25, 26],
    flowCoefficient: [0.26, 0.4],
    pressureCoefficient: [0.28, 0.48],
    noiseConstant: [24, 32],
    stalls: true,
  },
  {
    depths: [28, 38],
    flowCoefficient: [0.28, 0.4],
    pressureCoefficient: [0.42, 0.8],
    noiseConstant: [26, 32],
    stalls: true,
  },
];

/** Tip speed [m/s] of fans of this kind; common practice, no source. */
const tipSpeeds: Bounds = [3, 20];
/** Peak of p·Q over electrical power [-]; common practice, no source. */
const efficiencies: Bounds = [0.04, 0.3];
/**
 * Exponent of speed between two ratings of a fan [dB per decade]. Published: VDI 2081 spectra with 50 lg n
 * give an A-weighted exponent of 53 to 56; tones go with 60 and more (from memory: handbooks of fan noise).
 */
const speedExponents: Bounds = [45, 65];
/** Shares of full speed [-] at which a fan still turns and at which it starts; common practice, no source. */
const holdFloors: Bounds = [0.2, 0.3];
const startFloors: Bounds = [0.24, 0.4];
/** Place [share of free delivery] and height [share of shut-off pressure] of the rise behind a stall dip. */
const dipPlaces: Bounds = [0.3, 0.55];
const dipRises: Bounds = [0.02, 0.08];
/** Plain price; common practice, no source. */
const prices: Bounds = [5, 40];
/** Odd, so as not to beat with four struts; common practice, no source. */
const bladeCounts: readonly number[] = [5, 7, 9, 11];

/** Everything about a fan that is not plausible, one sentence each; empty if all is well. */
export function implausible(fan: WrittenFan): string[] {
  const depthClass = classOf(fan);
  if (depthClass === undefined) {
    return [`depth ${fan.depth} mm belongs to no class`];
  }
  const character = characterOf(fan);
  const outside = [
    outsideOf('flow coefficient', character.flowCoefficient, depthClass.flowCoefficient),
    outsideOf('pressure coefficient', character.pressureCoefficient, depthClass.pressureCoefficient),
    outsideOf('tip speed', character.tipSpeed, tipSpeeds),
    outsideOf('efficiency', character.efficiency, efficiencies),
    ...character.noiseConstants.map((c) => outsideOf('noise constant', c, depthClass.noiseConstant)),
    ...exponentsOf(fan).map((m) => outsideOf('speed exponent', m, speedExponents)),
    outsideOf('hold floor', fan.hold, holdFloors),
    outsideOf('start floor', fan.start, startFloors),
    outsideOf('start above hold', fan.start - fan.hold, [0.02, 0.12]),
    outsideOf('price', fan.price, prices),
    bladeCounts.includes(fan.blades) ? '' : `blade count ${fan.blades} is not usual`,
    Number.isFinite(fullSpeedLevel(fan)) ? '' : 'no rating at full speed',
    ...(fan.boxOnly ? [] : curveFaults(fan, depthClass.stalls)),
  ];
  return outside.filter((fault) => fault !== '');
}

function classOf(fan: WrittenFan): DepthClass | undefined {
  return depthClasses.find(({ depths }) => depths[0] <= fan.depth && fan.depth <= depths[1]);
}

function outsideOf(name: string, value: number, [least, greatest]: Bounds): string {
  return value >= least && value <= greatest
    ? ''
    : `${name} ${value.toPrecision(4)} is outside ${least} to ${greatest}`;
}

function exponentsOf(fan: WrittenFan): number[] {
  const ratings = [...fan.ratings].sort((a, b) => a.speed - b.speed);
  return ratings.slice(1).map((upper, i) => {
    const lower = ratings[i] ?? upper;
    return (upper.level - lower.level) / Math.log10(upper.speed / lower.speed);
  });
}

function curveFaults(fan: WrittenFan, stalls: boolean): string[] {
  const { flows, pressures } = fan;
  const rises = pressures.flatMap((pressure, i) => (i > 0 && pressure >= (pressures[i - 1] ?? 0) ? [i] : []));
  return [
    flows.length === pressures.length ? '' : 'flows and pressures are not equal in number',
    outsideOf('number of points', flows.length, [7, 10]),
    flows[0] === 0 && pressures.at(-1) === 0 ? '' : 'the curve does not run from shut-off to free delivery',
    flows.every((flow, i) => i === 0 || flow > (flows[i - 1] ?? 0)) ? '' : 'flows do not ascend',
    outsideOf('number of rises', rises.length, stalls ? [1, 1] : [0, 0]),
    ...rises.flatMap((i) => dipFaults(fan, i)),
  ];
}

/**
 * Derived: p(Q) meets aQ + bQ² once for all a, b ≥ 0 if p/Q falls, that is if the pressure rises by less
 * than the flow does.
 */
function dipFaults(fan: WrittenFan, peak: number): string[] {
  const [bottomFlow = 0, peakFlow = 0] = fan.flows.slice(peak - 1, peak + 1);
  const [bottom = 0, top = 0] = fan.pressures.slice(peak - 1, peak + 1);
  return [
    top / bottom < peakFlow / bottomFlow ? '' : 'several working points on one system',
    outsideOf('rise behind the dip', (top - bottom) / shutOff(fan), dipRises),
    outsideOf('bottom of the dip', bottomFlow / freeDelivery(fan), dipPlaces),
    outsideOf('top behind the dip', peakFlow / freeDelivery(fan), dipPlaces),
  ];
}
