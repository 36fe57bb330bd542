/**
 * Simultaneously developing laminar flow between two plates of one temperature, by finite volumes on the boundary-layer
 * equations: (u²)_x + (u·v)_y = -p_x + u_yy, u_x + v_y = 0, (u·θ)_x + (v·θ)_y = θ_yy/Pr.
 *
 * Lengths across are in gaps b, velocities in mean velocities, lengths along in b·Re_b, pressure in ρ·V². Half of the
 * channel is solved, from the plate to the middle. Each step is implicit; its pressure gradient follows from the mass
 * balance.
 */

/** State of the stream at one distance. */
export interface Station {
  /** Mean temperature over plate temperature, both above that of the entering air [-]. */
  readonly effectiveness: number;
  /** Pressure lost since the entry, in ρ·V² [-]. */
  readonly loss: number;
}

/** Rows of a tridiagonal system; the first row's `below` stands for the plate. */
interface System {
  readonly below: Float64Array;
  readonly at: Float64Array;
  readonly above: Float64Array;
}

const CELLS = 120;
/** Growth of the cells from the plate to the middle. */
const STRETCH = 1.025;
const FIRST_STEP = 1e-8;
const STEP_GROWTH = 1.03;
const LONGEST_STEP = 0.0005;

const widths = Float64Array.from({ length: CELLS }, (_, index) => STRETCH ** index);
const scale = 0.5 / widths.reduce((sum, width) => sum + width, 0);
widths.forEach((width, index) => {
  widths[index] = width * scale;
});
/** Inverse distance from each cell to the one nearer to the plate, of the first one to the plate itself. */
const ties = widths.map((width, index) => 2 / (width + (widths[index - 1] ?? 0)));

const get = (values: Float64Array, index: number): number => values[index] ?? 0;
const total = (values: Float64Array): number =>
  values.reduce((sum, value, index) => sum + value * get(widths, index), 0);

/**
 * Marches from the entry to a distance.
 *
 * @param prandtl Pr
 * @param distance x/(b·Re_b) = 1/Re*
 */
export function developingChannel(prandtl: number, distance: number): Station {
  let velocity: Float64Array = new Float64Array(CELLS).fill(1);
  let temperature: Float64Array = new Float64Array(CELLS);
  let loss = 0;
  let done = 0;
  for (let step = FIRST_STEP; done < distance; step *= STEP_GROWTH) {
    const length = Math.min(step, LONGEST_STEP, distance - done);
    const moved = push(velocity, length);
    temperature = warm(temperature, velocity, moved.velocity, length, prandtl);
    velocity = moved.velocity;
    loss += moved.drop;
    done += length;
  }
  const carried = velocity.map((u, index) => u * get(temperature, index));
  return { effectiveness: total(carried) / 0.5, loss };
}

/** One step of the velocity: first with the old one as carrier, then with the results. */
function push(old: Float64Array, length: number): { velocity: Float64Array; drop: number } {
  let carrier = old;
  let gradient = 0;
  for (let round = 0; round < 3; round++) {
    const system = transport(old, carrier, length, 1);
    const free = solve(
      system,
      old.map((u, index) => (u * u * get(widths, index)) / length),
    );
    const driven = solve(system, widths);
    gradient = (0.5 - total(free)) / total(driven);
    carrier = free.map((u, index) => u + gradient * get(driven, index));
  }
  return { velocity: carrier, drop: gradient * length };
}

/** One step of the temperature, the plate at 1. */
function warm(
  old: Float64Array,
  oldVelocity: Float64Array,
  velocity: Float64Array,
  length: number,
  prandtl: number,
): Float64Array {
  const right = old.map((t, index) => (t * get(oldVelocity, index) * get(widths, index)) / length);
  right[0] = get(right, 0) + get(ties, 0) / prandtl;
  return solve(transport(oldVelocity, velocity, length, 1 / prandtl), right);
}

/** Carrying along, carrying across and diffusion of anything with a diffusivity. */
function transport(old: Float64Array, carrier: Float64Array, length: number, diffusivity: number): System {
  const below = new Float64Array(CELLS);
  const at = new Float64Array(CELLS);
  const above = new Float64Array(CELLS);
  let inward = 0;
  for (let index = 0; index < CELLS; index++) {
    const along = get(widths, index) / length;
    const outward = inward - (get(carrier, index) - get(old, index)) * along;
    const towardPlate = diffusivity * get(ties, index);
    const towardMiddle = index === CELLS - 1 ? 0 : diffusivity * get(ties, index + 1);
    below[index] = -inward / 2 - towardPlate;
    at[index] = get(carrier, index) * along + (outward - inward) / 2 + towardPlate + towardMiddle;
    above[index] = index === CELLS - 1 ? 0 : outward / 2 - towardMiddle;
    inward = outward;
  }
  return { below, at, above };
}

/** Thomas' elimination. */
function solve({ below, at, above }: System, right: Float64Array): Float64Array {
  const factors = new Float64Array(CELLS);
  const result = new Float64Array(CELLS);
  let pivot = get(at, 0);
  result[0] = get(right, 0) / pivot;
  for (let index = 1; index < CELLS; index++) {
    factors[index] = get(above, index - 1) / pivot;
    pivot = get(at, index) - get(below, index) * get(factors, index);
    result[index] = (get(right, index) - get(below, index) * get(result, index - 1)) / pivot;
  }
  for (let index = CELLS - 2; index >= 0; index--) {
    result[index] = get(result, index) - get(factors, index + 1) * get(result, index + 1);
  }
  return result;
}
