import { curveFromBox } from '../../src/fan/box-figures.ts';
import { curveFromPoints, type FanCurve } from '../../src/fan/curve.ts';
import type { FanModel, Rating } from '../../src/fan/fan-model.ts';
import type { Random } from './random.ts';

const SHARES = [0, 0.12, 0.22, 0.32, 0.42, 0.52, 0.64, 0.76, 0.88, 1];

/** Curve between the two end points with a dip such as stall makes, half of the time deep enough to rise again. */
function dippedCurve(random: Random, delivery: number, shutOff: number): FanCurve {
  const linear = random.between(0, 1);
  const depth = random.chance(0.6) ? random.between(0.1, 0.45) : 0;
  const at = random.between(0.25, 0.5);
  const width = random.between(0.08, 0.2);
  const pressures = SHARES.map((share) => {
    const dip = 1 - depth * Math.exp(-(((share - at) / width) ** 2));
    return shutOff * (1 - share) * (1 + (1 - linear) * share) * dip;
  });
  return curveFromPoints({ flows: SHARES.map((share) => share * delivery), pressures });
}

/** One to three ratings; with three the level is interpolated between them. */
function ratingsOf(random: Random, fullSpeed: number, level: number): readonly Rating[] {
  const count = random.pick([1, 1, 2, 3]);
  const slope = random.between(40, 65);
  return Array.from({ length: count }, (_, index) => {
    const ratio = 1 - (count - 1 - index) * random.between(0.2, 0.3);
    const scatter = random.between(-1.5, 1.5);
    return {
      speed: ratio * fullSpeed,
      level: level + slope * Math.log10(ratio) + scatter,
      basisStated: true,
    };
  });
}

/**
 * An invented axial fan of a usual size: flow, pressure and level follow its size and tip speed roughly, with
 * enough scatter that no fan is best at everything.
 */
export function randomFan(random: Random, id: string): FanModel {
  const size = random.pick([0.06, 0.08, 0.092, 0.12]);
  const fullSpeed = random.spread(900, 4000) / 60;
  const tip = Math.PI * size * fullSpeed;
  const delivery = random.between(0.5, 0.95) * size ** 3 * fullSpeed;
  const shutOff = random.between(0.25, 0.8) * 0.6 * tip * tip;
  const curve = random.chance(0.4)
    ? curveFromBox(delivery, shutOff, random.between(0, 1))
    : dippedCurve(random, delivery, shutOff);
  const level = 28 + 50 * Math.log10(tip / 10.5) + 20 * Math.log10(size / 0.08) + random.between(-4, 4);
  const holdFloor = random.between(0.15, 0.45);
  return {
    id,
    size,
    depth: random.pick([0.015, 0.025]),
    fullSpeed,
    holdFloor,
    startFloor: Math.min(1, holdFloor + 0.1),
    curve,
    ratings: ratingsOf(random, fullSpeed, level),
    power: random.spread(0.3, 4),
    provenance: 'invented',
  };
}
