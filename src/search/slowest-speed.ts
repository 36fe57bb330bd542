import type { Bank } from '../enclosure/enclosure.ts';
import { evaluateRise, REFERENCE_DENSITY, type Rise } from '../fan/curve.ts';
import type {
  Fraction,
  KilogramsPerCubicMetre,
  KilogramsPerSecond,
  Pascals,
} from '../quantities/dimensions.ts';

const rise: Rise = { rise: 0, slope: 0 };

/** Pressure rise of a bank [Pa] at a speed. */
export function riseAt(
  bank: Bank,
  ratio: Fraction,
  flow: KilogramsPerSecond,
  density: KilogramsPerCubicMetre,
): Pascals {
  evaluateRise(bank.fan.curve, flow / (density * bank.count), ratio, density / REFERENCE_DENSITY, rise);
  return rise.rise;
}

/** Relative accuracy of speeds in the bounds; they are rounded down, worth 0.01 dB. */
const SPEED_TOLERANCE = 5e-4;
const SPEED_TRIALS = 12;

/**
 * Slowest speed that gives a rise, rounded down [-]. The rise grows about with the square of the speed, so false
 * position on the square root closes in within a few trials.
 */
export function slowestGiving(
  bank: Bank,
  needed: Pascals,
  flow: KilogramsPerSecond,
  density: KilogramsPerCubicMetre,
): Fraction {
  let low = bank.fan.holdFloor;
  let high = 1;
  let lowMiss = riseAt(bank, low, flow, density) - needed;
  let highMiss = riseAt(bank, high, flow, density) - needed;
  for (let count = 0; count < SPEED_TRIALS && high / low > 1 + SPEED_TOLERANCE; count++) {
    const share = lowMiss / (lowMiss - highMiss);
    const square = low * low + share * (high * high - low * low);
    // A trifle to either side in turn, so that both ends close in.
    const aim = Math.sqrt(square) * (1 + (count % 2 === 0 ? 0.4 : -0.4) * SPEED_TOLERANCE);
    const ratio = aim > low && aim < high ? aim : 0.5 * (low + high);
    const miss = riseAt(bank, ratio, flow, density) - needed;
    if (miss < 0) {
      low = ratio;
      lowMiss = miss;
      highMiss *= 0.5;
    } else {
      high = ratio;
      highMiss = miss;
      lowMiss *= 0.5;
    }
  }
  return low;
}
