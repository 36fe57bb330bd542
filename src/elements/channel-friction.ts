/** f·Re of a channel against the Reynolds number, Darcy. */
export interface ChannelFriction {
  /** f·Re [-]. */
  value(reynolds: number): number;
  /** d ln(f·Re)/d ln Re [-]. */
  exponent(reynolds: number): number;
}

/** Turbulent friction f = 0.3164·Re^-1/4. Source: Blasius (1913), from memory. */
const BLASIUS = 0.3164;
const BLASIUS_EXPONENT = 0.75;
/** Half width of the seam between laminar and turbulent friction, as ln Re [-] (assumption). */
const SEAM = 0.2;

/**
 * Developing laminar friction √(growth·Re + developed²), or Blasius' turbulent one where that is larger. About the
 * Reynolds number at which they meet a cubic in the logarithms joins them without a kink, at most 4 % above both.
 *
 * Source: Muzychka & Yovanovich composite of Shah & London (1978); Blasius (1913) (from memory); the seam is a model
 * assumption.
 *
 * @param growth see `entranceGrowth` [-], ≥ 0
 * @param developed f·Re far from the entry [-], > 0
 */
export function channelFriction(growth: number, developed: number): ChannelFriction {
  const square = developed * developed;
  const laminar = (reynolds: number) => Math.sqrt(growth * reynolds + square);
  const laminarExponent = (reynolds: number) => (growth * reynolds) / (2 * (growth * reynolds + square));

  const middle = onset(growth, square);
  const start = middle * Math.exp(-SEAM);
  const end = middle * Math.exp(SEAM);
  const left = { height: Math.log(laminar(start)), slope: laminarExponent(start) };
  const right = Math.log(BLASIUS * end ** BLASIUS_EXPONENT);
  const secant = (right - left.height) / (2 * SEAM);
  const bend = 3 * secant - 2 * left.slope - BLASIUS_EXPONENT;
  const twist = left.slope + BLASIUS_EXPONENT - 2 * secant;
  const along = (reynolds: number) => Math.log(reynolds / start) / (2 * SEAM);

  return {
    value: (reynolds) => {
      if (reynolds < start) return laminar(reynolds);
      if (reynolds >= end) return BLASIUS * reynolds ** BLASIUS_EXPONENT;
      const t = along(reynolds);
      return Math.exp(left.height + 2 * SEAM * t * (left.slope + t * (bend + t * twist)));
    },
    exponent: (reynolds) => {
      if (reynolds < start) return laminarExponent(reynolds);
      if (reynolds >= end) return BLASIUS_EXPONENT;
      const t = along(reynolds);
      return left.slope + t * (2 * bend + 3 * t * twist);
    },
  };
}

/** Reynolds number at which turbulent friction overtakes laminar friction; there is exactly one. */
function onset(growth: number, square: number): number {
  const excess = (reynolds: number) => BLASIUS ** 2 * reynolds ** 1.5 - growth * reynolds - square;
  let low = 1;
  let high = 2;
  while (excess(high) < 0) high *= 2;
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (excess(middle) < 0) low = middle;
    else high = middle;
  }
  return high;
}
