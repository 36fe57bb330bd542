import { type Air, airAt } from '../air/air.ts';
import { streamAlong } from '../heat/stagnant-air.ts';
import type { KelvinsPerWatt } from '../quantities/dimensions.ts';
import type { MachineElement } from './machine.ts';
import type { FinsOutcome } from './outcome.ts';
import { HOTTEST_AIR } from './pass-state.ts';
import { placeId, type SolvedPass } from './solved-pass.ts';

/** Air that enters fins, and how much of it [m³/s]. */
function enteringFins({ conditions, state }: SolvedPass, seat: MachineElement) {
  const temperature = (state.stages[seat.leg] as Float64Array)[seat.stage] as number;
  const inlet: Air = airAt(conditions.site, Math.min(temperature, HOTTEST_AIR));
  return { inlet, flow: Math.abs(state.network.flows[seat.leg] as number) / inlet.density };
}

/** Fins that parts sit on, each stack once. */
export function finRemarks(solved: SolvedPass): readonly string[] {
  const { machine } = solved;
  const stacks = new Map<number, MachineElement>();
  for (const seat of machine.seats) if (seat) stacks.set(seat.place, seat);
  return [...stacks.values()].flatMap((seat) => {
    const { inlet, flow } = enteringFins(solved, seat);
    const remarks = flow > 0 ? (seat.element.remarksAt?.(flow, inlet) ?? []) : [];
    return remarks.map((remark) => `${placeId(machine, seat.place)}: ${remark}`);
  });
}

/**
 * Resistance of the fins under a part at the present flow, with the band of a sink that is known by one point only:
 * what its unknown exponent leaves open, and never less than the heat balance of the air asks.
 *
 * @param solved a pass that has settled
 * @param seat of the part
 * @param resistance found [K/W]
 */
export function finsOutcome(
  solved: SolvedPass,
  seat: MachineElement,
  resistance: KelvinsPerWatt,
): FinsOutcome {
  const { inlet, flow } = enteringFins(solved, seat);
  const place = placeId(solved.machine, seat.place);
  const { finUncertainty } = seat.element;
  if (!finUncertainty || flow === 0) return { place, resistance };
  const factor = 1 + finUncertainty(flow, inlet);
  const stream = streamAlong(solved.state.network.flows[seat.leg] as number);
  const least = 1 / (stream * solved.conditions.specificHeat);
  // Where that balance governs already, the band cannot begin above what was found.
  const low = Math.min(resistance, Math.max(least, resistance / factor));
  return { place, resistance, band: { low, high: resistance * factor } };
}
