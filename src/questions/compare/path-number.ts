import type { SeriesLeg } from '../../airway/series.ts';
import type { Duty } from '../../enclosure/enclosure.ts';
import type { Machine } from '../../enclosure/machine.ts';
import { createPass } from '../../enclosure/pass.ts';
import { conditionsOf, newPassState } from '../../enclosure/pass-state.ts';
import { REFERENCE_DENSITY } from '../../fan/curve.ts';

const TOLERANCE = 1e-7;

/**
 * How hard the way of a bank is for its fan [-]: k = R·Q0²/p0 with R = p/Q² at the working point at full speed, Q0 the
 * free delivery and p0 the shut-off pressure of one fan. Below about one a second fan helps most beside the first, far
 * above it behind the first. Other banks run at full speed too; what they help is taken off.
 *
 * Source: dimensionless form of the system curve, common practice.
 *
 * @param machine the build
 * @param duty the state of use
 * @param place of the bank
 * @returns undefined if no fan turns there, nothing resists it, or there is no solution
 */
export function pathNumber(machine: Machine, duty: Duty, place: number): number | undefined {
  const index = machine.banks.findIndex((bank) => bank.place === place);
  const found = machine.banks[index];
  if (!found) return undefined;
  const ratios = Float64Array.from(machine.banks, () => 1);
  const state = newPassState(machine);
  const conditions = conditionsOf(machine.plant.enclosure, duty);
  if (createPass(machine)(conditions, ratios, state, TOLERANCE)) return undefined;
  const leg = machine.legs[found.leg] as SeriesLeg;
  const massFlow = state.network.flows[found.leg] as number;
  const density = leg.densities[found.stage] as number;
  const rise = -leg.stageLoss(found.stage, massFlow);
  const { freeDelivery, shutOff } = found.bank.fan.curve;
  const number =
    (rise / (massFlow / density) ** 2) * (freeDelivery ** 2 / (shutOff * (density / REFERENCE_DENSITY)));
  return Number.isFinite(number) && number > 0 ? number : undefined;
}
