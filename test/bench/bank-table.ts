import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import type { MachineBank } from '../../src/enclosure/machine.ts';
import { riseAt } from '../../src/search/slowest-speed.ts';
import { levelAtRatio, workingPointTerm } from '../../src/sound/fan-noise.ts';
import { energy } from '../../src/sound/levels.ts';
import { stallTerm } from '../../src/sound/stall.ts';

/** Speeds at which a bank is tabled, evenly from hold floor to full speed [-]. */
export const SPEEDS = 16;

/** What a bank does at one flow, at each of its tabled speeds. */
export interface BankTable {
  readonly rises: readonly number[];
  readonly energies: readonly number[];
}

/** Rises and energies of a bank at a mass flow in air of a density. */
export function bankTable(
  { assumptions, listener }: Enclosure,
  placed: MachineBank,
  derating: number,
  flow: number,
  density: number,
): BankTable {
  const { fan, count } = placed.bank;
  const ratios = Array.from(
    { length: SPEEDS },
    (_, step) => fan.holdFloor + ((1 - fan.holdFloor) * step) / (SPEEDS - 1),
  );
  const { sound } = assumptions;
  return {
    rises: ratios.map((ratio) => {
      const rise = riseAt(placed.bank, ratio, flow, density);
      return rise > 0 ? derating * rise : rise;
    }),
    energies: ratios.map((ratio) => {
      const share = flow / (density * count * ratio * fan.curve.freeDelivery);
      const working = Math.max(
        workingPointTerm(share, sound),
        stallTerm(share, fan.curve.peakFlow / fan.curve.freeDelivery, sound),
      );
      const level = levelAtRatio(placed.speedLevel, ratio) + working + placed.installation;
      const own = energy(level) + energy(sound.fanFloor);
      return (placed.nearness * count * own) / listener.distance ** 2;
    }),
  };
}
