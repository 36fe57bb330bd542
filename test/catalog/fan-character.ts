import type { WrittenFan } from './written-fan.ts';

/** Rotor diameter as a share of the frame side [-]; common practice, no source. */
const ROTOR_SHARE = 0.94;
/**
 * Hub over rotor diameter [-] by least depth of frame [mm]: flat motors are wide, strong ones too, and
 * motors do not shrink with the smallest frames. Common practice, no source.
 */
const hubRatios: readonly (readonly [depth: number, ratio: number])[] = [
  [28, 0.45],
  [20, 0.42],
  [0, 0.46],
];
const SMALL_FRAME = 50;
const SMALL_FRAME_HUB = 0.04;
/** Density the curves refer to [kg/m³]. */
const DENSITY = 1.2;

/** Non-dimensional figures of a fan [-], its tip speed [m/s] and noise constants [dB]. */
export interface Character {
  readonly tipSpeed: number;
  readonly flowCoefficient: number;
  readonly pressureCoefficient: number;
  readonly efficiency: number;
  readonly noiseConstants: readonly number[];
}

/** Free delivery [m³/s]. */
export function freeDelivery(fan: WrittenFan): number {
  return fan.flows.at(-1) ?? 0;
}

/** Shut-off pressure [Pa]. */
export function shutOff(fan: WrittenFan): number {
  return fan.pressures[0] ?? 0;
}

/** Level at 1 m [dB] of the rating at full speed. */
export function fullSpeedLevel(fan: WrittenFan): number {
  return fan.ratings.find((rating) => rating.speed === fan.speed)?.level ?? Number.NaN;
}

/** Derives the non-dimensional figures; algebra only. */
export function characterOf(fan: WrittenFan): Character {
  const diameter = (ROTOR_SHARE * fan.size) / 1000;
  const annulus = (Math.PI / 4) * diameter ** 2 * (1 - hubRatio(fan) ** 2);
  const tipSpeed = Math.PI * diameter * fan.speed;
  return {
    tipSpeed,
    flowCoefficient: freeDelivery(fan) / (annulus * tipSpeed),
    pressureCoefficient: shutOff(fan) / (0.5 * DENSITY * tipSpeed ** 2),
    efficiency: greatestAirPower(fan) / fan.power,
    noiseConstants: fan.ratings.map(
      ({ speed, level }) => level - 55 * Math.log10((Math.PI * diameter * speed) / 10),
    ),
  };
}

/** Flow [m³/s] of greatest p·Q on the straight lines between the points, or on 1 - x/2 - x²/2 (sampled). */
export function bestFlow(fan: WrittenFan): number {
  const samples = Array.from({ length: 201 }, (_, i) => (i / 200) * freeDelivery(fan));
  const powers = samples.map((flow) => flow * pressureAt(fan, flow));
  return samples[powers.indexOf(Math.max(...powers))] ?? 0;
}

/** Greatest p·Q [W]. */
export function greatestAirPower(fan: WrittenFan): number {
  const flow = bestFlow(fan);
  return flow * pressureAt(fan, flow);
}

/** Pressure [Pa] at a flow [m³/s] between zero and free delivery. */
export function pressureAt(fan: WrittenFan, flow: number): number {
  if (fan.boxOnly) {
    const x = flow / freeDelivery(fan);
    return shutOff(fan) * (1 - x / 2 - x ** 2 / 2);
  }
  const right = Math.max(
    1,
    fan.flows.findIndex((known) => known >= flow),
  );
  const [fromFlow = 0, toFlow = 0] = fan.flows.slice(right - 1, right + 1);
  const [from = 0, to = 0] = fan.pressures.slice(right - 1, right + 1);
  return from + ((to - from) * (flow - fromFlow)) / (toFlow - fromFlow);
}

function hubRatio(fan: WrittenFan): number {
  const [, ratio = Number.NaN] = hubRatios.find(([depth]) => fan.depth >= depth) ?? [];
  return ratio + (fan.size <= SMALL_FRAME ? SMALL_FRAME_HUB : 0);
}
