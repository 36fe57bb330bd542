import type { Kelvins } from '../quantities/dimensions.ts';
import { type Leg, OUTSIDE } from './enclosure.ts';
import type { PassState } from './pass-state.ts';

/**
 * Temperature of the air that enters a leg [K]: that of the chamber it comes from, or room air mixed with the exhaust
 * that the leg draws in again while it runs inward.
 *
 * @param leg to enter
 * @param forward whether the air runs along it
 * @param state of the chambers
 */
export function enteringAir(leg: Leg, forward: boolean, { chambers }: PassState): Kelvins {
  const source = forward ? leg.from : leg.to;
  const own = chambers[source] as number;
  if (!forward || source !== OUTSIDE || leg.recirculation === 0) return own;
  const exhaust = chambers[chambers.length - 1] as number;
  return own + leg.recirculation * (exhaust - own);
}
