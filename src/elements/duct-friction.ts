import type { Metres, SquareMetres } from '../quantities/dimensions.ts';
import type { FlowLaw } from './element.ts';
import { entranceGrowth, rectangularFriction } from './laminar-friction.ts';

/** Friction factor and its slope on logarithmic scales. */
interface Friction {
  readonly factor: number;
  /** d ln f / d ln Re. */
  readonly exponent: number;
}

/** Below this Reynolds number the turbulent part of the formula is lost in the last digit. */
const SURELY_LAMINAR = 500;

/**
 * Darcy friction factor of a smooth duct in laminar, transitional and turbulent flow.
 *
 * f = 8·[u¹² + (A + B)^-1.5]^(1/12), A = (2.457·ln[(Re/7)^0.9])¹⁶, B = (37530/Re)¹⁶; u is an eighth of the laminar
 * factor, 8/Re in a long round pipe.
 *
 * Source: Churchill, Chemical Engineering 84 (1977) no. 24; agrees with the library fluids 1.0.22.
 *
 * @param reynolds on the laminar-equivalent diameter [-], > 0
 * @param laminar laminar friction factor and its exponent [-]; 64/Re and -1 in a long round pipe
 */
export function churchillFriction(reynolds: number, laminar: Friction): Friction {
  if (reynolds < SURELY_LAMINAR) return laminar;
  const logarithm = Math.log(reynolds / 7);
  const a = fourth(fourth(2.457 * 0.9 * logarithm));
  const b = fourth(fourth(37_530 / reynolds));
  const turbulent = 1 / ((a + b) * Math.sqrt(a + b));
  const turbulentExponent = ((-1.5 / 12) * 16 * (a / logarithm - b)) / (a + b);
  const low = cube(fourth(laminar.factor / 8));
  return {
    factor: 8 * (low + turbulent) ** (1 / 12),
    exponent: (low * laminar.exponent + turbulent * turbulentExponent) / (low + turbulent),
  };
}

/** x³ */
function cube(x: number): number {
  return x * x * x;
}

/** x⁴; products are several times faster than powers, and networks evaluate this often. */
function fourth(x: number): number {
  const square = x * x;
  return square * square;
}

/** A straight rectangular duct [m]. */
export interface Duct {
  readonly width: Metres;
  readonly height: Metres;
  readonly length: Metres;
}

/**
 * Wall friction of a straight smooth rectangular duct, developing profile included.
 *
 * Laminar f·Re = √(13.76²·Re·Dh/L + (f·Re)²_developed); beyond it Churchill's formula, whose laminar branch this
 * replaces, at the Reynolds number Re·64/(f·Re)_developed.
 *
 * Source: Shah & London (1978) with the composite of Muzychka & Yovanovich; Churchill (1977); laminar-equivalent
 * diameter by Jones, J. Fluids Eng. 98 (1976) (all from memory).
 *
 * @param duct sides and length [m], > 0
 */
export function ductFriction({ width, height, length }: Duct): FlowLaw {
  const area: SquareMetres = width * height;
  const diameter = (2 * area) / (width + height);
  const developed = rectangularFriction(Math.min(width, height) / Math.max(width, height));
  const growth = entranceGrowth(length / diameter);
  const scale = length / (2 * diameter * area * area);

  const reynoldsAt = (flow: number, density: number, viscosity: number) =>
    (density * Math.abs(flow) * diameter) / (area * viscosity);
  const frictionAt = (reynolds: number): Friction => {
    const square = growth * reynolds + developed * developed;
    const laminar = Math.sqrt(square) / reynolds;
    const exponent = (growth * reynolds) / (2 * square) - 1;
    return churchillFriction((reynolds * 64) / developed, { factor: laminar, exponent });
  };
  return {
    loss: (flow, density, viscosity) => {
      if (flow === 0) return 0;
      const { factor } = frictionAt(reynoldsAt(flow, density, viscosity));
      return scale * density * factor * flow * Math.abs(flow);
    },
    slope: (flow, density, viscosity) => {
      if (flow === 0) return (scale * viscosity * area * developed) / diameter;
      const { factor, exponent } = frictionAt(reynoldsAt(flow, density, viscosity));
      return scale * density * factor * Math.abs(flow) * (2 + exponent);
    },
  };
}
