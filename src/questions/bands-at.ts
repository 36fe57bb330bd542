import { buildBands, type DutyBands } from '../bands/build-bands.ts';
import { inOneDuty } from '../bands/one-duty.ts';
import { type ResponseOptions, responseOf } from '../bands/response.ts';
import type { Duty } from '../enclosure/enclosure.ts';
import { assemble, type Machine, plantOf } from '../enclosure/machine.ts';

/**
 * Bands of a build in one duty at fixed speeds; null without a solution as stated.
 *
 * @param machine the build
 * @param duty the only state of use that counts
 * @param ratios speed of each bank as a share of full speed [-]
 * @param options what is of interest
 */
export function bandsAt(
  { plant, build }: Machine,
  duty: Duty,
  ratios: ArrayLike<number>,
  options?: ResponseOptions,
): DutyBands | null {
  const alone = assemble(plantOf(inOneDuty(plant.enclosure, duty)), build);
  const response = responseOf(alone, [Float64Array.from(ratios)], options);
  return typeof response === 'string' ? null : (buildBands(response).duties[0] ?? null);
}
