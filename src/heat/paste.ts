import type { KelvinsPerWatt, Metres, SquareMetres, WattsPerMetreKelvin } from '../quantities/dimensions.ts';

/** A layer of paste, pad or glue between two faces. */
export interface Paste {
  /** Thickness of the layer once pressed [m]. */
  readonly thickness: Metres;
  readonly conductivity: WattsPerMetreKelvin;
  readonly area: SquareMetres;
}

/**
 * Resistance of a layer [K/W]: thickness over conductivity times area. Contacts of its two faces are left out.
 *
 * Source: Fourier's law.
 *
 * @param paste the layer; all figures > 0
 */
export function pasteResistance({ thickness, conductivity, area }: Paste): KelvinsPerWatt {
  return thickness / (conductivity * area);
}
