import { bounded, written } from '../quantities/written.ts';

/** Form of a discharge coefficient Cd in Q = Cd·A·√(2Δp/ρ): a plain number above 0, at most 1. */
export const dischargeCoefficient = bounded(
  written.factor,
  'a discharge coefficient above 0, at most 1',
  (value) => value > 0 && value <= 1,
);
