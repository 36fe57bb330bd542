import { dutyOutcome } from '../../enclosure/duty-outcome.ts';
import type { Duty } from '../../enclosure/enclosure.ts';
import type { Machine } from '../../enclosure/machine.ts';

/**
 * Most points of tone risk that a bank has in a duty that takes a share of the time; 0 if nothing turns.
 *
 * @param machine the build
 * @param speeds of the banks by duty [-]; a duty without speeds does not count
 */
export function tonePointsOf(machine: Machine, speeds: readonly (Float64Array | null)[]): number {
  let most = 0;
  machine.plant.enclosure.duties.forEach((duty: Duty, index) => {
    const ratios = speeds[index];
    if (duty.share === 0 || !ratios) return;
    const outcome = dutyOutcome(machine, duty, ratios);
    if (typeof outcome === 'string') return;
    for (const { points } of outcome.sound.tones.banks) most = Math.max(most, points);
  });
  return most;
}
