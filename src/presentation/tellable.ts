import type { KelvinDifference, Kelvins } from '../quantities/dimensions.ts';

/**
 * Temperatures and differences from here on are told as no more than this [°C or K]: aluminium melts at 660 °C, so that
 * whatever made such a figure (no air, a part that runs away) is no longer what was described. Model assumption.
 */
export const MOST_TOLD = 700;

/** 0 °C [K]. */
const ZERO: Kelvins = 273.15;

/** Whether a temperature means anything. */
export function isTellable(temperature: Kelvins): boolean {
  return temperature < MOST_TOLD + ZERO;
}

/** A temperature as data [K]: null if there is none or it is beyond all use; what is no number the document tells. */
export function temperatureData(temperature: Kelvins | undefined): number | null {
  if (temperature === undefined) return null;
  return !Number.isFinite(temperature) || isTellable(temperature) ? temperature : null;
}

/** A difference of temperatures as data [K], in the same way. */
export function kelvinData(difference: KelvinDifference | undefined): number | null {
  if (difference === undefined) return null;
  return !Number.isFinite(difference) || Math.abs(difference) < MOST_TOLD ? difference : null;
}
