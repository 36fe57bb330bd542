import { holds, type Probe, type Sample } from './probe.ts';

/** Range of each log speed. */
export interface Box {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** What a lattice over a box shows. */
export interface Survey {
  /** The quietest adequate sample of each cell that has any, quietest first. */
  readonly spots: readonly Sample[];
  /** The coolest corner met, if any was looked at. */
  readonly coolest: Sample | null;
  /** Width of a cell along each axis. */
  readonly widths: Float64Array;
}

interface Lattice {
  readonly probe: Probe;
  readonly box: Box;
  /** Corners along each axis. */
  readonly sides: readonly number[];
  readonly widths: Float64Array;
  readonly corners: Map<number, Sample>;
  readonly edges: Map<number, Sample>;
}

/** Halvings of an edge on which adequate turns into inadequate. */
const HALVINGS = 6;

function strideOf(lattice: Lattice, axis: number): number {
  return lattice.sides.slice(0, axis).reduce((product, side) => product * side, 1);
}

function speedsAt(lattice: Lattice, corner: number): Float64Array {
  let rest = corner;
  return lattice.box.low.map((low, axis) => {
    const side = lattice.sides[axis] as number;
    const at = rest % side;
    rest = Math.floor(rest / side);
    return low + at * (lattice.widths[axis] as number);
  });
}

function cornerAt(lattice: Lattice, corner: number): Sample {
  let sample = lattice.corners.get(corner);
  if (!sample) {
    sample = lattice.probe.at(speedsAt(lattice, corner));
    lattice.corners.set(corner, sample);
  }
  return sample;
}

/**
 * Halves an edge between an adequate and an inadequate corner, the slower of the two first; the adequate end. Ends
 * early where the rest of the edge cannot be quieter than what is known.
 */
function crossing(lattice: Lattice, key: number, slower: Sample, faster: Sample, known: number): Sample {
  const found = lattice.edges.get(key);
  if (found) return found;
  const upward = holds(faster);
  let [good, bad] = upward ? [faster, slower] : [slower, faster];
  for (let count = 0; count < HALVINGS; count++) {
    if (lattice.probe.quietest((upward ? bad : good).speeds) >= known) break;
    const other = bad;
    const middle = lattice.probe.at(
      good.speeds.map((speed, axis) => 0.5 * (speed + (other.speeds[axis] as number))),
    );
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  lattice.edges.set(key, good);
  return good;
}

/** First corners of all cells with the least energy possible in them, quietest first. */
function cellsOf(lattice: Lattice): readonly { readonly corner: number; readonly least: number }[] {
  const total = lattice.sides.reduce((product, side) => product * side, 1);
  const cells: { corner: number; least: number }[] = [];
  for (let corner = 0; corner < total; corner++) {
    const inside = lattice.sides.every((side, axis) => {
      const at = Math.floor(corner / strideOf(lattice, axis)) % side;
      return side === 1 || at < side - 1;
    });
    if (inside) cells.push({ corner, least: lattice.probe.quietest(speedsAt(lattice, corner)) });
  }
  return cells.sort((a, b) => a.least - b.least || a.corner - b.corner);
}

/** Corners of a cell, counted in binary: bit by axis. */
function cornersOf(lattice: Lattice, first: number): readonly number[] {
  let corners = [first];
  lattice.sides.forEach((side, axis) => {
    if (side === 1) corners = corners.flatMap((corner) => [corner, corner]);
    else corners = [...corners, ...corners.map((corner) => corner + strideOf(lattice, axis))];
  });
  return [...new Set(corners)];
}

function quieter(best: Sample | null, sample: Sample): Sample {
  return best && best.energy <= sample.energy ? best : sample;
}

/** Quietest adequate sample at the corners and on the edges of a cell. */
function bestOf(lattice: Lattice, first: number, known: number): Sample | null {
  const corners = cornersOf(lattice, first);
  let best: Sample | null = null;
  for (const corner of corners) {
    const here = cornerAt(lattice, corner);
    if (holds(here)) best = quieter(best, here);
    lattice.sides.forEach((_, axis) => {
      const next = corner + strideOf(lattice, axis);
      if (next === corner || !corners.includes(next)) return;
      const there = cornerAt(lattice, next);
      if (holds(here) === holds(there)) return;
      best = quieter(best, crossing(lattice, corner * lattice.sides.length + axis, here, there, known));
    });
  }
  return best;
}

/**
 * Looks at a box on a lattice, cell by cell, quietest first, as long as a cell may be quieter than what is known.
 *
 * Every edge on which adequate turns into inadequate is halved several times, so that the boundary is met closely
 * wherever it crosses the lattice. Nothing is assumed about which way is cooler.
 *
 * @param probe the build and duty
 * @param box range of the log speeds
 * @param side corners along each axis, 2 or more
 * @param allowed energy from which on a cell is of no interest [-]
 * @param first stops at the first adequate sample if true
 */
export function survey(probe: Probe, box: Box, side: number, allowed: number, first = false): Survey {
  const spans = box.high.map((high, axis) => high - (box.low[axis] as number));
  const sides = Array.from(spans, (span) => (span > 0 ? side : 1));
  const widths = spans.map((span) => span / (side - 1));
  const lattice: Lattice = { probe, box, sides, widths, corners: new Map(), edges: new Map() };
  const spots: Sample[] = [];
  let known = allowed;
  let coolest: Sample | null = null;
  for (const { corner, least } of cellsOf(lattice)) {
    if (least >= known || (first && spots.length > 0)) break;
    const best = bestOf(lattice, corner, known);
    if (best) {
      spots.push(best);
      known = Math.min(known, best.energy);
    }
    for (const sample of cornersOf(lattice, corner).map((each) => cornerAt(lattice, each))) {
      if (!coolest || sample.worst < coolest.worst) coolest = sample;
    }
  }
  return { spots: spots.sort((a, b) => a.energy - b.energy), coolest, widths };
}
