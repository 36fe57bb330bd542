import type { Build, Enclosure } from '../../enclosure/enclosure.ts';

/** Speeds at which a build meets a demand. */
export interface Met {
  /** Speeds of the banks by duty [-]. */
  readonly speeds: readonly Float64Array[];
  /** Sound energy at the listener by duty [-]. */
  readonly energies: Float64Array;
}

/**
 * A demand on builds beyond holding their limits. The search knows it from outside only: an enclosure that asks no more,
 * for the bounds, and speeds that meet it, for a single build.
 */
export interface DemandOnBuilds {
  /**
   * The same places, with limits that every build holds at all speeds at which it meets the demand. Bounds of this
   * enclosure then hold for the demand.
   */
  readonly atLeast: Enclosure;
  /**
   * Quietest speeds at which a build meets the demand; null if there are none, or if they are sure to be too loud.
   *
   * @param build one option index per place
   * @param start speeds at which it holds the limits of `atLeast`, by duty; null where nobody looked for them
   * @param isTooLoud whether a build with such energies by duty is of no interest
   */
  readonly meet: (
    build: Build,
    start: readonly (Float64Array | null)[],
    isTooLoud: (energies: Float64Array) => boolean,
  ) => Met | null;
}
