import { type Drive, drivesOf, perBank, perDrive } from '../../enclosure/drives.ts';
import type { Trial } from '../trial.ts';

interface Box {
  readonly floors: readonly number[];
  readonly ceilings: readonly number[];
}

/** A trial of the speeds that may be chosen, instead of those of all banks. */
function driven(trial: Trial, drives: readonly Drive[]): Trial {
  if (drives.every(({ banks }) => banks.length === 1)) return trial;
  const all = (values: Float64Array): Float64Array => perBank(drives, values);
  return {
    ...trial,
    evaluate: (values) => ({ ...trial.evaluate(all(values)), ratios: Float64Array.from(values) }),
    leastEnergy: (values) => trial.leastEnergy(all(values)),
    allSpeeds: all,
  };
}

/**
 * The trial restricted to each combination of the speed ranges its banks may run in, with one speed for the banks of
 * each header; just itself if no bank has speeds to avoid and none share one.
 *
 * @param trial of all banks
 */
export function speedBoxes(trial: Trial): readonly Trial[] {
  const drives = drivesOf(trial.machine);
  let boxes: readonly Box[] = [{ floors: [], ceilings: [] }];
  for (const { ranges } of drives) {
    boxes = boxes.flatMap(({ floors, ceilings }) =>
      ranges.map(({ from, to }) => ({ floors: [...floors, from], ceilings: [...ceilings, to] })),
    );
  }
  const whole = driven(trial, drives);
  return boxes.map(({ floors, ceilings }) => ({
    ...whole,
    floors: Float64Array.from(floors),
    ceilings: Float64Array.from(ceilings),
  }));
}

/**
 * Speeds of all banks as values of a box, if they lie in it.
 *
 * @param box made of the same build
 * @param ratios one a bank [-]
 * @returns null if they do not
 */
export function inBox(box: Trial, ratios: Float64Array): Float64Array | null {
  const values = perDrive(drivesOf(box.machine), ratios);
  const inside = values.every(
    (value, drive) => value >= (box.floors[drive] as number) && value <= (box.ceilings[drive] as number),
  );
  return inside ? values : null;
}
