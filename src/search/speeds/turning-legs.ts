import type { Trial } from '../trial.ts';
import type { SpeedNode } from './speed-node.ts';

/** Legs in which there is heat, by index, in order: where their air turns round that heat is divided anew. */
export interface HeatedLegs {
  /** Heat of parts: a limit may hold in a slot of speeds that is narrower than any lattice. */
  readonly ofParts: readonly number[];
  /** Heat of the fans alone, which is little: limits have an edge there. */
  readonly ofFans: readonly number[];
}

/**
 * The legs of a build in which there is heat.
 *
 * @param trial build and duty
 */
export function heatedLegs({ machine }: Trial): HeatedLegs {
  const parts = new Set(machine.seats.flatMap((seat) => (seat ? [seat.leg] : [])));
  const fans = new Set(machine.banks.flatMap(({ leg, bank }) => (bank.fan.power > 0 ? [leg] : [])));
  const ordered = (legs: ReadonlySet<number>) => [...legs].sort((one, other) => one - other);
  return { ofParts: ordered(parts), ofFans: ordered(fans).filter((leg) => !parts.has(leg)) };
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
