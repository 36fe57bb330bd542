/** One thing that is asked of the unknowns: Σ slopes·x ≤ most. */
export interface Condition {
  readonly slopes: ArrayLike<number>;
  readonly most: number;
}

/** Everything about the conditions, row by row, scaled to slopes of length 1. */
export interface ConditionRows {
  readonly rows: Float64Array;
  readonly most: Float64Array;
  readonly count: number;
  /** Number of unknowns [-]. */
  readonly size: number;
}

/**
 * Conditions row by row.
 *
 * @param conditions what is asked of the unknowns
 * @param size number of unknowns [-]
 */
export function conditionRows(conditions: readonly Condition[], size: number): ConditionRows {
  const rows = new Float64Array(conditions.length * size);
  const most = new Float64Array(conditions.length);
  conditions.forEach((condition, row) => {
    let square = 0;
    for (let index = 0; index < size; index++) square += (condition.slopes[index] as number) ** 2;
    // A condition without slopes holds or does not, whatever the unknowns are.
    const length = square > 0 ? Math.sqrt(square) : 1;
    for (let index = 0; index < size; index++) {
      rows[row * size + index] = (condition.slopes[index] as number) / length;
    }
    most[row] = condition.most / length;
  });
  return { rows, most, count: conditions.length, size };
}

/**
 * Adds a multiple of one condition's slopes.
 *
 * @param conditions all of them
 * @param row which one [-]
 * @param factor the multiple [any unit]
 * @param to list that it is added to, one entry an unknown [any unit]; changed
 */
export function addRow({ rows, size }: ConditionRows, row: number, factor: number, to: Float64Array): void {
  for (let index = 0; index < size; index++) {
    to[index] = (to[index] as number) + factor * (rows[row * size + index] as number);
  }
}

/**
 * Product of one condition's slopes with a list.
 *
 * @param conditions all of them
 * @param row which one [-]
 * @param values one entry an unknown [any unit]
 * @returns the sum [any unit]
 */
export function alongRow({ rows, size }: ConditionRows, row: number, values: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < size; index++) {
    sum += (rows[row * size + index] as number) * (values[index] as number);
  }
  return sum;
}

/**
 * Adds weight·slopesᵀ·slopes of one condition to the lower triangle of a matrix.
 *
 * @param conditions all of them
 * @param row which one [-]
 * @param weight the factor [any unit]
 * @param matrix row-major, one row an unknown [any unit]; changed
 */
export function addWeighted(
  { rows, size }: ConditionRows,
  row: number,
  weight: number,
  matrix: Float64Array,
): void {
  for (let index = 0; index < size; index++) {
    const weighted = weight * (rows[row * size + index] as number);
    for (let other = 0; other <= index; other++) {
      const at = index * size + other;
      matrix[at] = (matrix[at] as number) + weighted * (rows[row * size + other] as number);
    }
  }
}
