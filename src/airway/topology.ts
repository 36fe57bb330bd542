/** Which chambers the legs join; chamber 0 is outside and has pressure 0. */
export interface Topology {
  /** Number of chambers, outside included [-], ≥ 1. */
  readonly chambers: number;
  /** Chamber each leg starts from. */
  readonly from: readonly number[];
  /** Chamber each leg ends in. */
  readonly to: readonly number[];
}
