import { fingerDistance } from '../../elements/finger-distance.ts';
import type { Hole, HoleShape } from '../../elements/hole-shape.ts';
import type { Metres } from '../../quantities/dimensions.ts';
import { leastHole } from './sheet-rules.ts';
import type { VentTask } from './vent-task.ts';

/** Sizes of drills and of punching tools one finds everywhere [m] (common practice, no source). */
const SIZES: readonly Metres[] = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10, 12, 14, 16, 20].map(
  (size) => size / 1000,
);
/** Length of a slot over its width [-], where the field allows it (assumption). */
const SLOT_RATIO = 8;

/** Whether a finger that passes a hole stays clear of the blades. */
function isOutOfReach(hole: Hole, blades: Metres): boolean {
  const asked = fingerDistance(hole);
  return asked !== undefined && asked <= blades + 1e-9;
}

/**
 * A hole of a shape and size; a slot is as long as its field allows, at most eight times as long as wide.
 *
 * @param shape of the hole
 * @param size diameter, side, distance across flats or width [m]
 * @param width of the field [m]
 */
function holeOf(shape: HoleShape, size: Metres, width: Metres): Hole {
  const length = shape === 'slot' ? Math.max(size, Math.min(SLOT_RATIO * size, width)) : size;
  return { shape, size, length };
}

/**
 * Holes of one shape that may be made: no smaller than the process allows, none through which a finger reaches the
 * blades. A size that was asked for is tried as it is.
 *
 * @param task the opening
 * @param shape of the holes
 */
export function holesFor(task: VentTask, shape: HoleShape): readonly Hole[] {
  const { hole, process, sheet, blades } = task;
  const { width } = sheet.perforated;
  if (hole !== undefined) return [holeOf(shape, hole, width)];
  const least = leastHole(process, sheet.sheet);
  return SIZES.filter((size) => size >= least - 1e-9)
    .map((size) => holeOf(shape, size, width))
    .filter((each) => isOutOfReach(each, blades));
}
