import type { Kelvins, KelvinsPerWatt, PerKelvin, Watts } from '../quantities/dimensions.ts';

/** Power of which one share does not depend on temperature and the rest grows exponentially with it. */
export interface LeakyPower {
  /** Share that stays [W], ≥ 0. */
  readonly steady: Watts;
  /** Share that grows, at the reference temperature [W], > 0. */
  readonly leaking: Watts;
  /** Relative growth of that share [1/K], > 0. */
  readonly growth: PerKelvin;
  /** Reference temperature [K]. */
  readonly at: Kelvins;
}

/** The resistance beyond which a part runs away, and the temperature it has there. */
export interface RunawayBoundary {
  /** [K/W] */
  readonly resistance: KelvinsPerWatt;
  /** [K]; infinite if the power grows linearly. */
  readonly temperature: Kelvins;
}

const MOST_STEPS = 100;
/** Relative step below which a temperature counts as settled [-]: the rounding of numbers. */
const ROUNDING = 1e-15;

/**
 * Power [W] at a temperature: P_s + P_L·exp(B·(T − T₀)).
 *
 * Source: leakage of chips, exponential from 20 to 85 °C (published: arXiv 1404.3381).
 *
 * @param power its two shares
 * @param temperature T [K]
 */
export function leakyPowerAt({ steady, leaking, growth, at }: LeakyPower, temperature: Kelvins): Watts {
  return steady + leaking * Math.exp(growth * (temperature - at));
}

/**
 * Growth of the power with temperature [W/K]: P_L·B·exp(B·(T − T₀)).
 *
 * Source: derivative of the power, derived.
 *
 * @param power its two shares
 * @param temperature T [K]
 */
export function leakySlopeAt({ leaking, growth, at }: LeakyPower, temperature: Kelvins): number {
  return leaking * growth * Math.exp(growth * (temperature - at));
}

/**
 * Temperature [K] at which a part with leakage settles, the lower and stable root of T = T_a + R·P(T); undefined if
 * there is none: the part runs away.
 *
 * T − T_a − R·P(T) is concave and greatest where R·dP/dT is 1, so that there is a root below if it is not negative
 * there. From T_a Newton's steps rise to the root and never pass it.
 *
 * Source: derived; condition of stability dP/dT < 1/R published in power electronics practice on thermal runaway.
 *
 * @param power its two shares
 * @param air T_a [K]
 * @param resistance R to that air [K/W], ≥ 0
 */
export function settledWithLeakage(
  power: LeakyPower,
  air: Kelvins,
  resistance: KelvinsPerWatt,
): Kelvins | undefined {
  if (resistance === 0) return air;
  const { steady, leaking, growth, at } = power;
  const top = at - Math.log(resistance * leaking * growth) / growth;
  const spare = top - air - resistance * steady - 1 / growth;
  if (!(spare >= 0)) return undefined;
  let temperature = air;
  for (let step = 0; step < MOST_STEPS; step++) {
    const missing = air + resistance * leakyPowerAt(power, temperature) - temperature;
    const slope = 1 - resistance * leakySlopeAt(power, temperature);
    // So near the boundary the root is a double one: rounding is all that is left.
    if (missing <= ROUNDING * temperature || slope <= 0) break;
    temperature = Math.min(top, temperature + missing / slope);
  }
  return temperature;
}

/**
 * The runaway boundary of a part with leakage above given air: R·P(T) = T − T_a and R·dP/dT = 1 at once, which is
 * (u − 1)·exp(u) = P_s/Λ with u = B·(T − T_a) and Λ the leakage at the temperature of the air.
 *
 * Source: tangency, derived.
 *
 * @param power its two shares
 * @param air T_a [K]
 */
export function leakageBoundary(power: LeakyPower, air: Kelvins): RunawayBoundary {
  const { steady, leaking, growth, at } = power;
  const ratio = steady / (leaking * Math.exp(growth * (air - at)));
  // In v = u − 1 the equation is ln(v) + v + 1 = ln(ratio), concave: Newton from the left of the root rises to it.
  let v = ratio / (Math.E + ratio);
  for (let step = 0; step < MOST_STEPS && ratio > 0; step++) {
    const change = (v * (Math.log(ratio / v) - 1 - v)) / (v + 1);
    v += change;
    if (Math.abs(change) <= ROUNDING * v) break;
  }
  const temperature = air + (1 + v) / growth;
  return { resistance: 1 / leakySlopeAt(power, temperature), temperature };
}
