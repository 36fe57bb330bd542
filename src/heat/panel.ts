import type { Fraction, Kelvins } from '../quantities/dimensions.ts';

/** What a panel that people may touch is made of. */
export type PanelMaterial = 'metal' | 'glass' | 'plastic';

/** Temperatures of a panel that people may touch. */
export interface TouchLimits {
  /** Above this it is too warm to be held for a minute or more [K]. */
  readonly held: Kelvins;
  /** Above this it is too warm to be touched for some seconds [K]. */
  readonly touched: Kelvins;
}

/**
 * Touch temperatures by material, as orientation and never as certification: 48 °C for a minute and more, and what 1 to
 * 10 s allow. The published values hold in a room of 25 °C; here they are applied to the panel as it is. Source: IEC
 * 62368-1, table 38, class TS1 (from memory; 48 °C and 77 °C confirmed by public discussions of the standard).
 */
export const touchLimits: Readonly<Record<PanelMaterial, TouchLimits>> = {
  metal: { held: 321.15, touched: 333.15 },
  glass: { held: 321.15, touched: 344.15 },
  plastic: { held: 321.15, touched: 350.15 },
};

/**
 * Temperature of a panel [K] between the air of a chamber and the room: its own resistance is left out, so that the
 * films of air on its two faces share the drop.
 *
 * Source: resistances in series.
 *
 * @param air of the chamber [K]
 * @param room [K]
 * @param share of the drop that lies outside [-], 0 to 1: the inner film coefficient over the sum of both
 */
export function panelTemperature(air: Kelvins, room: Kelvins, share: Fraction): Kelvins {
  return room + share * (air - room);
}
