import type { Build, Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, type Machine, plantOf } from '../../src/enclosure/machine.ts';
import { buildsOf } from './builds.ts';
import { type Box, type Survey, survey } from './lattice.ts';
import { type Probe, probeOf, type Sample } from './probe.ts';

/** How fine the lattices are. */
export interface Fineness {
  /** Corners along each axis of the first lattice, by number of banks. */
  readonly sides: readonly number[];
  /** The same for the lattices that zoom in. */
  readonly zoomSides: readonly number[];
  /** Places zoomed into. */
  readonly spots: number;
  /** Zooming ends when the cells are this narrow in log speed. */
  readonly narrow: number;
}

/** Dense enough to trust; the level is flat to about 0.001 dB within the last cells. */
export const FINE: Fineness = { sides: [2, 64, 40, 18], zoomSides: [2, 9, 9, 7], spots: 5, narrow: 1.5e-3 };
/** Quick enough for every test run. */
export const QUICK: Fineness = { sides: [2, 24, 10, 6], zoomSides: [2, 6, 6, 5], spots: 2, narrow: 5e-3 };

/** Lattices drawn around the coolest corner where nothing adequate was met. */
const POCKET_ZOOMS = 3;
/** No such pocket is looked for further above a limit than this [K]. */
const HOPELESS = 10;
/** Builds louder than the list's last by less than this are kept: 0.05 dB. */
const KEPT = 10 ** 0.005;

/** An adequate build with its mean energy and its speeds in each duty (empty where it only has to survive). */
export interface Found {
  readonly build: Build;
  readonly energy: number;
  readonly speeds: readonly (readonly number[])[];
}

/** The box one cell to each side of a sample. */
function around(sample: Sample, widths: Float64Array, whole: Box): Box {
  const { speeds } = sample;
  return {
    low: speeds.map((speed, axis) => Math.max(whole.low[axis] as number, speed - (widths[axis] as number))),
    high: speeds.map((speed, axis) => Math.min(whole.high[axis] as number, speed + (widths[axis] as number))),
  };
}

function contains({ low, high }: Box, { speeds }: Sample): boolean {
  return speeds.every((speed, axis) => speed >= (low[axis] as number) && speed <= (high[axis] as number));
}

/** Places to zoom into: around the quietest samples, none inside another. */
function boxesAround(
  spots: readonly Sample[],
  widths: Float64Array,
  whole: Box,
  most: number,
): readonly Box[] {
  const boxes: Box[] = [];
  for (const spot of spots) {
    if (boxes.length < most && !boxes.some((box) => contains(box, spot)))
      boxes.push(around(spot, widths, whole));
  }
  return boxes;
}

/** Zooms into a box until its cells are narrow. */
function zoomed(probe: Probe, start: Box, whole: Box, fineness: Fineness, known: Sample): Sample {
  let best = known;
  let box = start;
  for (;;) {
    const { spots, widths } = survey(
      probe,
      box,
      fineness.zoomSides[probe.floors.length] ?? 2,
      best.energy * KEPT,
    );
    const spot = spots[0];
    if (!spot) return best;
    if (spot.energy < best.energy) best = spot;
    if (Math.max(...widths) <= fineness.narrow) return best;
    box = around(spot, widths, whole);
  }
}

/** A survey around the coolest sample where the whole range shows nothing adequate: pockets smaller than a cell. */
function pocket(probe: Probe, first: Survey, whole: Box, side: number, allowed: number): Survey {
  let here = first;
  for (let count = 0; here.coolest && here.spots.length === 0 && count < POCKET_ZOOMS; count++) {
    if (here.coolest.worst > HOPELESS) break;
    here = survey(probe, around(here.coolest, here.widths, whole), side, allowed);
  }
  return here;
}

/**
 * Quietest adequate sample of a build in a duty by lattice and zoom, or null if nothing adequate is met that may
 * be quieter than allowed.
 *
 * @param probe build and duty
 * @param fineness of the lattices
 * @param allowed energy of interest [-]
 */
export function quietestByForce(probe: Probe, fineness: Fineness, allowed: number): Sample | null {
  const whole: Box = { low: probe.floors, high: probe.floors.map(() => 0) };
  const banks = probe.floors.length;
  const side = fineness.sides[banks] ?? 2;
  const zoomSide = fineness.zoomSides[banks] ?? 2;
  const { spots, widths } = pocket(probe, survey(probe, whole, side, allowed), whole, zoomSide, allowed);
  let best = spots[0] ?? null;
  if (banks === 0) return best;
  for (const box of boxesAround(spots, widths, whole, fineness.spots)) {
    if (best) best = zoomed(probe, box, whole, fineness, best);
  }
  return best;
}

/** Whether any speeds hold all limits. */
export function survives(probe: Probe, fineness: Fineness): boolean {
  const whole: Box = { low: probe.floors, high: probe.floors.map(() => 0) };
  const banks = probe.floors.length;
  const corner = survey(probe, { low: whole.high, high: whole.high }, 2, Number.POSITIVE_INFINITY);
  if (corner.spots.length > 0) return true;
  const first = survey(probe, whole, fineness.sides[banks] ?? 2, Number.POSITIVE_INFINITY, true);
  if (first.spots.length > 0) return true;
  const zoomSide = fineness.zoomSides[banks] ?? 2;
  return pocket(probe, first, whole, zoomSide, Number.POSITIVE_INFINITY).spots.length > 0;
}

function solved(machine: Machine, fineness: Fineness, allowed: number): Omit<Found, 'build'> | null {
  const { duties } = machine.plant.enclosure;
  const probes = duties.map((duty) => probeOf(machine, duty));
  const floor = probes[0]?.quietest(probes[0].floors) ?? 0;
  const speeds: (readonly number[])[] = duties.map(() => []);
  // Every duty not yet solved makes at least the noise of the floors.
  let sum = floor;
  for (const [index, duty] of duties.entries()) {
    if (duty.share === 0) continue;
    const limit = (allowed - (sum - duty.share * floor)) / duty.share;
    const best = quietestByForce(probes[index] as Probe, fineness, limit);
    if (!best) return null;
    sum += duty.share * (best.energy - floor);
    speeds[index] = Array.from(best.speeds, Math.exp);
    if (sum >= allowed) return null;
  }
  const lasting = duties.every((duty, index) => duty.share > 0 || survives(probes[index] as Probe, fineness));
  return lasting ? { energy: sum, speeds } : null;
}

/**
 * The quietest adequate builds of an enclosure, quietest first, by trying everything on lattices of speeds.
 *
 * @param enclosure the scenario, small
 * @param top length of the list; builds hardly louder than the last may follow
 * @param fineness of the lattices
 */
export function rankedByForce(enclosure: Enclosure, top: number, fineness: Fineness): readonly Found[] {
  const plant = plantOf(enclosure);
  let list: Found[] = [];
  for (const build of buildsOf(enclosure)) {
    const last = list[top - 1];
    const allowed = last ? last.energy * KEPT : Number.POSITIVE_INFINITY;
    const found = solved(assemble(plant, build), fineness, allowed);
    if (found) list = [...list, { build, ...found }].sort((a, b) => a.energy - b.energy);
  }
  const last = list[top - 1];
  return last ? list.filter(({ energy }) => energy <= last.energy * KEPT) : list;
}
