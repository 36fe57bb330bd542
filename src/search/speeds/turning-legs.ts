import type { Trial } from '../trial.ts';
import type { SpeedNode } from './speed-node.ts';

/**
 * Legs in which there is heat: where their air turns round it is divided anew, and a limit may hold in a slot of speeds that
 * is narrower than any lattice.
 *
 * @param trial build and duty
 * @returns indices of legs, in order
 */
export function heatedLegs({ machine }: Trial): readonly number[] {
  const legs = new Set<number>();
  for (const seat of machine.seats) if (seat) legs.add(seat.leg);
  return [...legs].sort((one, other) => one - other);
}

/**
 * Whether the air of a leg turns round somewhere between nodes.
 *
 * @param nodes corners of a cell
 * @param legs indices of legs
 */
export function turnsBetween(nodes: readonly SpeedNode[], legs: readonly number[]): boolean {
  return legs.some((leg) => {
    const flows = nodes.flatMap(({ point }) => point.flows[leg] ?? []);
    return flows.some((flow) => flow > 0) && flows.some((flow) => flow <= 0);
  });
}

/**
 * Places on the edges of a cell at which the air of a leg stands still, by interpolation.
 *
 * @param corners nodes of the cell; a bit of the index tells which end of a side
 * @param banks number of sides [-]
 * @param legs indices of legs
 * @returns shares of the sides from the slowest corner
 */
export function turningPlaces(
  corners: readonly SpeedNode[],
  banks: number,
  legs: readonly number[],
): readonly (readonly number[])[] {
  const places: number[][] = [];
  for (const leg of legs) {
    for (let corner = 0; corner < corners.length; corner++) {
      for (let bank = 0; bank < banks; bank++) {
        if (corner & (1 << bank)) continue;
        const from = corners[corner]?.point.flows[leg];
        const to = corners[corner | (1 << bank)]?.point.flows[leg];
        if (from === undefined || to === undefined || from > 0 === to > 0) continue;
        const place: number[] = Array.from({ length: banks }, (_, side) => (corner & (1 << side) ? 1 : 0));
        places.push(place.with(bank, from / (from - to)));
      }
    }
  }
  return places;
}
