import type { Decibels } from '../quantities/dimensions.ts';

/**
 * A-weighting at nominal third-octave centres [Hz] -> [dB].
 * Source: IEC 61672-1:2013, table 3 (published: python-acoustics, iec_61672_1_2013.csv).
 */
const WEIGHTS: ReadonlyMap<number, Decibels> = new Map([
  [10, -70.4],
  [12.5, -63.4],
  [16, -56.7],
  [20, -50.5],
  [25, -44.7],
  [31.5, -39.4],
  [40, -34.6],
  [50, -30.2],
  [63, -26.2],
  [80, -22.5],
  [100, -19.1],
  [125, -16.1],
  [160, -13.4],
  [200, -10.9],
  [250, -8.6],
  [315, -6.6],
  [400, -4.8],
  [500, -3.2],
  [630, -1.9],
  [800, -0.8],
  [1000, 0],
  [1250, 0.6],
  [1600, 1],
  [2000, 1.2],
  [2500, 1.3],
  [3150, 1.2],
  [4000, 1],
  [5000, 0.5],
  [6300, -0.1],
  [8000, -1.1],
  [10000, -2.5],
  [12500, -4.3],
  [16000, -6.6],
  [20000, -9.3],
]);

/**
 * Poles of the A-weighting [Hz] and the gain that makes it 0 at 1 kHz [dB].
 * Source: IEC 61672-1, annex E (from memory).
 */
const POLES = { first: 20.598997, second: 107.65265, third: 737.86223, fourth: 12194.217 };
const GAIN: Decibels = 1.99966;

/**
 * A-weighting of a band by its nominal centre [dB].
 *
 * The table and not the function is for bands: nominal centres are rounded, and at 80 Hz the function is 0.1 off.
 * Source: IEC 61672-1:2013, table 3.
 *
 * @param centre nominal third-octave centre [Hz], 10 to 20 000
 * @throws RangeError if the frequency is no nominal centre
 */
export function bandWeight(centre: number): Decibels {
  const weight = WEIGHTS.get(centre);
  if (weight === undefined) throw new RangeError(`${centre} Hz is no nominal centre of a third-octave band`);
  return weight;
}

/**
 * A-weighting at any frequency [dB].
 *
 * Source: IEC 61672-1:2013, equation E.6 (published: python-acoustics, iec_61672_1_2013.py), poles unrounded.
 *
 * @param frequency frequency [Hz], ≥ 0; 0 gives -Infinity
 */
export function weightAt(frequency: number): Decibels {
  const { first, second, third, fourth } = POLES;
  const square = frequency * frequency;
  const gain =
    (fourth ** 2 * square ** 2) /
    ((square + first ** 2) *
      Math.sqrt((square + second ** 2) * (square + third ** 2)) *
      (square + fourth ** 2));
  return 20 * Math.log10(gain) + GAIN;
}
