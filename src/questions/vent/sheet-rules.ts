import type { HoleShape } from '../../elements/hole-shape.ts';
import type { Metres } from '../../quantities/dimensions.ts';

/** How holes are made. */
export const PROCESSES = ['drill', 'punch', 'laser'] as const;

export type Process = (typeof PROCESSES)[number];

/** What a way of making holes can do. */
interface ProcessRules {
  /** Shapes it makes. */
  readonly shapes: readonly HoleShape[];
  /** Smallest hole and narrowest web, whatever the sheet [m]. */
  readonly leastHole: Metres;
  readonly leastWeb: Metres;
  /** Whether a hole takes as long as it is long to cut, or all take alike. */
  readonly cuts: 'edge' | 'hole';
}

/**
 * Holes and webs of 1 mm at least, and never below the thickness of the sheet: rules that laser and punch shops publish.
 * A drill by hand wanders: 1.5 mm (common practice, no source). All are assumptions.
 */
const rules: Readonly<Record<Process, ProcessRules>> = {
  drill: { shapes: ['round'], leastHole: 0.001, leastWeb: 0.0015, cuts: 'hole' },
  punch: { shapes: ['round', 'hexagon', 'slot', 'square'], leastHole: 0.001, leastWeb: 0.001, cuts: 'hole' },
  laser: { shapes: ['round', 'hexagon', 'slot', 'square'], leastHole: 0.001, leastWeb: 0.001, cuts: 'edge' },
};

/** What a process makes. */
export function shapesOf(process: Process): readonly HoleShape[] {
  return rules[process].shapes;
}

/** What takes time in a process. */
export function cutsOf(process: Process): 'edge' | 'hole' {
  return rules[process].cuts;
}

/**
 * Smallest hole a process makes in a sheet [m].
 *
 * @param process of making it
 * @param thickness of the sheet [m]
 */
export function leastHole(process: Process, thickness: Metres): Metres {
  return Math.max(rules[process].leastHole, thickness);
}

/**
 * Narrowest web a process leaves in a sheet [m].
 *
 * @param process of making it
 * @param thickness of the sheet [m]
 */
export function leastWeb(process: Process, thickness: Metres): Metres {
  return Math.max(rules[process].leastWeb, thickness);
}
