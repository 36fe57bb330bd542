import type { CubicMetresPerSecond, Pascals } from '../quantities/dimensions.ts';

/** Δp = a·Q + b·Q². */
export interface FittedLoss {
  /** [Pa·s/m³], ≥ 0. */
  readonly linear: number;
  /** [Pa·s²/m⁶], ≥ 0. */
  readonly quadratic: number;
  /** Largest relative distance of a point from the fit [-]. */
  readonly misfit: number;
}

/**
 * Fits a·Q + b·Q² to measured points by least squares of the relative distances, with a ≥ 0 and b ≥ 0.
 *
 * With two unknowns the non-negative solution is the free one, or else the better of the two with one term only.
 *
 * Source: Lawson & Hanson, Solving Least Squares Problems (1974), chapter 23, for two columns.
 *
 * @param flows [m³/s], > 0
 * @param pressures [Pa], > 0, as many
 */
export function fitLoss(flows: readonly CubicMetresPerSecond[], pressures: readonly Pascals[]): FittedLoss {
  const rows = flows.map((flow, index) => {
    const pressure = pressures[index] ?? Number.NaN;
    return { linear: flow / pressure, quadratic: (flow * flow) / pressure };
  });
  const sum = (term: (row: { linear: number; quadratic: number }) => number) =>
    rows.reduce((total, row) => total + term(row), 0);
  const ll = sum((row) => row.linear ** 2);
  const lq = sum((row) => row.linear * row.quadratic);
  const qq = sum((row) => row.quadratic ** 2);
  const l = sum((row) => row.linear);
  const q = sum((row) => row.quadratic);
  const determinant = ll * qq - lq * lq;
  const free = { linear: (l * qq - q * lq) / determinant, quadratic: (q * ll - l * lq) / determinant };
  const best =
    free.linear >= 0 && free.quadratic >= 0
      ? free
      : l ** 2 / ll > q ** 2 / qq
        ? { linear: l / ll, quadratic: 0 }
        : { linear: 0, quadratic: q / qq };
  const distances = rows.map((row) =>
    Math.abs(best.linear * row.linear + best.quadratic * row.quadratic - 1),
  );
  return { ...best, misfit: Math.max(...distances) };
}
