import { REFERENCE_DENSITY } from '../../fan/curve.ts';
import type { KilogramsPerCubicMetre } from '../../quantities/dimensions.ts';
import { energy } from '../../sound/levels.ts';
import { cleared, type Effort, type PlacedBank } from '../bank-effort.ts';
import { riseAt } from '../slowest-speed.ts';
import { flowAt } from './flow-grid.ts';

/** Air that a bank is asked to move, on the grid of volume flows. */
export interface GridAir {
  /** Step whose flow gives the pressure. */
  readonly low: number;
  /** Step at whose flow the working point is taken; may be infinite. */
  readonly top: number;
  /** Least and greatest density [kg/m³]. */
  readonly thin: KilogramsPerCubicMetre;
  readonly dense: KilogramsPerCubicMetre;
}

/**
 * Energies and pressure rises of a bank over its range of speeds, from tables on the grid of volume flows: no rise is less
 * than at any density of the range.
 *
 * @param placed the bank
 * @param air on the grid
 * @param out overwritten and returned
 */
export function effortOnGrid(placed: PlacedBank, air: GridAir, out: Effort): Effort {
  const { ratios, grid, nearness } = placed;
  const { energies, rises } = cleared(out, ratios.length);
  const { count, fan } = placed.bank;
  const floor = energy(placed.sound.fanFloor);
  const dense = air.dense / REFERENCE_DENSITY;
  const thin = air.thin / REFERENCE_DENSITY;
  grid.rises.read(air.low, ratios.length - 1, rises, 1);
  grid.factors.read(air.top, ratios.length - 1, energies, 1);
  for (let index = 1; index < ratios.length; index++) {
    const ratio = ratios[index] as number;
    const full = rises[index] as number;
    rises[index] = (full > 0 ? dense : thin) * ratio * ratio * full;
    const own = (placed.energies[index] as number) * (energies[index] as number);
    energies[index] = nearness * count * (own + floor);
  }
  const flow = flowAt(air.low);
  const least = riseAt(placed.bank, fan.holdFloor, flow * air.dense, air.dense);
  rises[0] = least > 0 ? least : riseAt(placed.bank, fan.holdFloor, flow * air.thin, air.thin);
  energies[0] = nearness * count * ((placed.energies[0] as number) + floor);
  return out;
}
