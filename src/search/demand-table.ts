import type { Enclosure, Leg } from '../enclosure/enclosure.ts';
import type { Pascals } from '../quantities/dimensions.ts';
import type { Demand, DemandAt, LegDemand } from './demand.ts';
import { bankPlaces } from './leg-banks.ts';
import type { OneChamberPlan } from './one-chamber-plan.ts';

/** Cells of chamber pressure between the nodes of a table. */
export const CELLS = 256;
/** Pressure around the room's, as a share of what the legs lose there, on which the grid is even. */
const EVEN_SHARE = 0.25;

/** Demands of a set of elements in a duty at the grid's pressures, worked out when first asked for. */
export interface DemandTable {
  readonly at: (node: number) => Demand;
}

/** Greatest shut-off pressure among the options of a bank place, in dense air [Pa]. */
function strongest(enclosure: Enclosure, index: number): Pascals {
  const place = enclosure.places[index];
  if (place?.kind !== 'bank') return 0;
  return place.options.reduce((most, bank) => Math.max(most, bank ? 1.2 * bank.fan.curve.shutOff : 0), 0);
}

/** Most pressure the fans of a leg could give [Pa]. */
function reach(enclosure: Enclosure, leg: number | null): Pascals {
  if (leg === null) return 1;
  return bankPlaces(enclosure, enclosure.legs[leg] as Leg).reduce(
    (sum, place) => sum + strongest(enclosure, place),
    1,
  );
}

/** Loss of the inward, else the outward leg if the chamber has the room's pressure: the scale of the grid [Pa]. */
function scaleOf({ inward, outward }: Demand): Pascals {
  const leg: LegDemand | null = inward ?? outward;
  return Math.max(0.1, leg ? Math.abs(leg.lossAt(leg.flow)) : 0);
}

/**
 * Demands on a grid of chamber pressures that reaches as far as fans can, dense near the room's.
 *
 * @param enclosure the scenario
 * @param plan which legs hold fans
 * @param demandAt works out one demand
 */
export function demandTable(enclosure: Enclosure, plan: OneChamberPlan, demandAt: DemandAt): DemandTable {
  const known = new Array<Demand | undefined>(CELLS + 1);
  const even = EVEN_SHARE * scaleOf(demandAt(0));
  const up = Math.asinh(reach(enclosure, plan.inward) / even);
  const down = Math.asinh(reach(enclosure, plan.outward) / even);
  const pressureAt = (node: number): Pascals => even * Math.sinh(-down + (node / CELLS) * (up + down));
  return {
    at: (node) => {
      const found = known[node] ?? demandAt(pressureAt(node));
      known[node] = found;
      return found;
    },
  };
}
