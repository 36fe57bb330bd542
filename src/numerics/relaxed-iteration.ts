/** Share of the first correction that is taken, and the bounds of those that follow [-]. */
const FIRST_SHARE = 1;
const SHARES = { least: 0.02, most: 1 } as const;

/** Corrections of an iteration to a fixed point, shortened where they would swing for ever. */
export interface RelaxedIteration {
  /** Forgets earlier rounds. */
  readonly begin: () => void;
  /** Takes note of the values a round starts from. */
  readonly assume: (values: readonly Float64Array[]) => void;
  /** Replaces what the round found by what the next one shall start from. */
  readonly correct: (values: readonly Float64Array[]) => void;
}

/**
 * Prepares a relaxed iteration x ← x + ω·(f(x) − x), in which the last two corrections tell the share ω. Where the map
 * contracts by itself corrections are taken whole.
 *
 * Source: Irons & Tuck, Int. J. Numer. Meth. Eng. 1 (1969) 275 (from memory).
 *
 * @param size number of values in all [-]
 */
export function createRelaxedIteration(size: number): RelaxedIteration {
  const assumed = new Float64Array(size);
  const missed = new Float64Array(size);
  const before = new Float64Array(size);
  let share = 0;

  /** Share of the corrections to take, from how the last share changed them. */
  const nextShare = (): number => {
    if (share === 0) return FIRST_SHARE;
    let along = 0;
    let length = 0;
    for (let entry = 0; entry < size; entry++) {
      const change = (missed[entry] as number) - (before[entry] as number);
      along += (before[entry] as number) * change;
      length += change * change;
    }
    const wanted = length > 0 ? (-share * along) / length : share;
    return Math.min(SHARES.most, Math.max(SHARES.least, wanted));
  };

  return {
    begin: () => {
      share = 0;
    },
    assume: (values) => {
      let entry = 0;
      for (const list of values) {
        assumed.set(list, entry);
        entry += list.length;
      }
    },
    correct: (values) => {
      let entry = 0;
      for (const list of values) {
        for (const value of list) {
          missed[entry] = value - (assumed[entry] as number);
          entry += 1;
        }
      }
      share = nextShare();
      before.set(missed);
      if (share === 1) return;
      entry = 0;
      for (const list of values) {
        for (let index = 0; index < list.length; index++) {
          list[index] = (assumed[entry] as number) + share * (missed[entry] as number);
          entry += 1;
        }
      }
    },
  };
}
