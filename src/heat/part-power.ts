import type { Fraction, Kelvins, KelvinsPerWatt, PerKelvin, Watts } from '../quantities/dimensions.ts';
import {
  type LeakyPower,
  leakageBoundary,
  leakyPowerAt,
  leakySlopeAt,
  type RunawayBoundary,
  settledWithLeakage,
} from './leakage.ts';
import { HOPELESS, powerAtTemperature, settledTemperature } from './part-temperature.ts';

/** Share of a part's power that grows exponentially with its temperature. */
export interface Leakage {
  /** At the temperature the part's power is stated for [W]; part of that power. */
  readonly power: Watts;
  /** Relative growth [1/K], > 0. */
  readonly growth: PerKelvin;
}

/** How the power of a part depends on its temperature. */
export interface PowerLaw {
  /** Power at the reference temperature [W]. */
  readonly power: Watts;
  /** Relative rise of the power with the part's temperature [1/K]; not used where there is leakage. */
  readonly slope: PerKelvin;
  /** Part temperature at which `power` holds [K]. */
  readonly powerAt: Kelvins;
  /** Leakage instead of a slope; the rest of the power then stays. */
  readonly leakage?: Leakage;
}

function leaky(
  { power, powerAt }: PowerLaw,
  { power: leaking, growth }: Leakage,
  factor: Fraction,
): LeakyPower {
  return { steady: factor * (power - leaking), leaking: factor * leaking, growth, at: powerAt };
}

/** Leakage that plays a part, if there is any. */
function leakageOf(law: PowerLaw, factor: Fraction): LeakyPower | undefined {
  const { leakage } = law;
  return leakage && factor * leakage.power > 0 ? leaky(law, leakage, factor) : undefined;
}

/**
 * Whether a part draws more the warmer it is, so that it may run away.
 *
 * Source: sign of the slope; leakage always grows.
 *
 * @param law of the part's power
 */
export function rises({ slope, leakage }: PowerLaw): boolean {
  return slope > 0 || leakage !== undefined;
}

/**
 * Power of a part [W] at its temperature.
 *
 * Source: linear or exponential growth as the part's law says; see `powerAtTemperature` and `leakyPowerAt`.
 *
 * @param law of the part
 * @param factor on the whole of its power, leakage included [-], ≥ 0
 * @param temperature of the part [K]
 */
export function partPower(law: PowerLaw, factor: Fraction, temperature: Kelvins): Watts {
  const leakage = leakageOf(law, factor);
  if (leakage) return leakyPowerAt(leakage, temperature);
  return powerAtTemperature(law.power * factor, law.slope, law.powerAt, temperature);
}

/**
 * Growth of a part's power with its temperature [W/K].
 *
 * Source: derivative of `partPower`, derived.
 *
 * @param law of the part
 * @param factor on the whole of its power [-], ≥ 0
 * @param temperature of the part [K]
 */
export function partPowerSlope(law: PowerLaw, factor: Fraction, temperature: Kelvins): number {
  const leakage = leakageOf(law, factor);
  if (leakage) return leakySlopeAt(leakage, temperature);
  return law.leakage ? 0 : law.power * factor * law.slope;
}

/**
 * Temperature [K] at which a part settles above given air; `HOPELESS` if it runs away.
 *
 * Source: closed form for linear growth, guarded root for leakage; derived.
 *
 * @param law of the part
 * @param factor on the whole of its power [-], ≥ 0
 * @param air temperature the resistance leads to [K]
 * @param resistance from the part to that air [K/W], ≥ 0
 */
export function settledPart(
  law: PowerLaw,
  factor: Fraction,
  air: Kelvins,
  resistance: KelvinsPerWatt,
): Kelvins {
  const leakage = leakageOf(law, factor);
  if (leakage) return Math.min(HOPELESS, settledWithLeakage(leakage, air, resistance) ?? HOPELESS);
  const slope = law.leakage ? 0 : law.slope;
  return settledTemperature(air, resistance, law.power * factor, slope, law.powerAt);
}

/**
 * Resistance [K/W] from which on a part runs away above given air, and its temperature there [K]; undefined if it
 * never does.
 *
 * Source: stability condition dP/dT < 1/R published in power electronics practice; tangency derived.
 *
 * @param law of the part
 * @param factor on the whole of its power [-], ≥ 0
 * @param air temperature the resistance leads to [K]
 */
export function runawayBoundary(law: PowerLaw, factor: Fraction, air: Kelvins): RunawayBoundary | undefined {
  const leakage = leakageOf(law, factor);
  if (leakage) return leakageBoundary(leakage, air);
  const growth = law.leakage ? 0 : law.power * factor * law.slope;
  return growth > 0 ? { resistance: 1 / growth, temperature: Number.POSITIVE_INFINITY } : undefined;
}
