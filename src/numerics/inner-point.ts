import { addRow, addWeighted, alongRow, type ConditionRows } from './condition-rows.ts';
import { solveSymmetric } from './symmetric-system.ts';

/** Slack and multiplier to begin with, of conditions scaled to slopes of length 1. */
const FIRST_SLACK = 0.1;
const FIRST_MULTIPLIER = 1;
/** Accuracy of conditions, of the balance of slopes, and of the complementarity, all scaled. */
const ACCURACY = { condition: 1e-9, balance: 1e-7, gap: 1e-12 } as const;
/** Share of the way to the nearest bound that is gone. */
const STAY_INSIDE = 0.995;

/** Longest share of a step, at most 1, that leaves all values above zero. */
function shareInside(values: Float64Array, step: Float64Array): number {
  let share = 1;
  for (let row = 0; row < values.length; row++) {
    if ((step[row] as number) < 0) share = Math.min(share, -(values[row] as number) / (step[row] as number));
  }
  return share;
}

function largest(values: Float64Array): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most;
}

function meanProduct(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < one.length; row++) sum += (one[row] as number) * (other[row] as number);
  return sum / one.length;
}

/** The objective and the conditions. */
export interface Program extends ConditionRows {
  readonly curvatures: ArrayLike<number>;
  readonly slopes: ArrayLike<number>;
}

/** Where the method is, and the step it takes next. */
export interface Iterate {
  readonly unknowns: Float64Array;
  readonly slack: Float64Array;
  readonly multipliers: Float64Array;
  /** By how much conditions and slacks do not fit each other, and slopes do not balance. */
  readonly missed: Float64Array;
  readonly unbalanced: Float64Array;
  readonly matrix: Float64Array;
  readonly step: Float64Array;
  readonly slackStep: Float64Array;
  readonly multiplierStep: Float64Array;
}

/**
 * Where the method begins.
 *
 * @param program the objective and the conditions
 */
export function firstIterate({ size, most, count }: Program): Iterate {
  return {
    unknowns: new Float64Array(size),
    slack: most.map((value) => Math.max(value, FIRST_SLACK)),
    multipliers: new Float64Array(count).fill(FIRST_MULTIPLIER),
    missed: new Float64Array(count),
    unbalanced: new Float64Array(size),
    matrix: new Float64Array(size * size),
    step: new Float64Array(size),
    slackStep: new Float64Array(count),
    multiplierStep: new Float64Array(count),
  };
}

/**
 * Measures how far the unknowns are from the conditions of a least value.
 *
 * @param program the objective and the conditions
 * @param iterate where the method is
 */
export function measure(program: Program, iterate: Iterate): void {
  const { curvatures, slopes, most, count } = program;
  const { unknowns, slack, multipliers, missed, unbalanced } = iterate;
  for (let index = 0; index < unbalanced.length; index++) {
    unbalanced[index] =
      (curvatures[index] as number) * (unknowns[index] as number) + (slopes[index] as number);
  }
  for (let row = 0; row < count; row++) {
    missed[row] = alongRow(program, row, unknowns) + (slack[row] as number) - (most[row] as number);
    addRow(program, row, multipliers[row] as number, unbalanced);
  }
}

/**
 * Whether the unknowns are those of the least value.
 *
 * @param iterate where the method is, measured
 */
export function isDone({ missed, unbalanced, slack, multipliers }: Iterate): boolean {
  return (
    largest(missed) <= ACCURACY.condition &&
    largest(unbalanced) <= ACCURACY.balance &&
    meanProduct(slack, multipliers) <= ACCURACY.gap
  );
}

/** Newton step towards where nothing is missed and each slack times its multiplier has lost its product. */
function newtonStep(program: Program, iterate: Iterate, products: Float64Array): boolean {
  const { size, count, curvatures } = program;
  const { slack, multipliers, missed, unbalanced, matrix, step, slackStep, multiplierStep } = iterate;
  matrix.fill(0);
  for (let index = 0; index < size; index++) {
    matrix[index * size + index] = curvatures[index] as number;
    step[index] = -(unbalanced[index] as number);
  }
  for (let row = 0; row < count; row++) {
    const room = slack[row] as number;
    const weight = (multipliers[row] as number) / room;
    addRow(program, row, (products[row] as number) / room - weight * (missed[row] as number), step);
    addWeighted(program, row, weight, matrix);
  }
  if (!solveSymmetric(matrix, step, size)) return false;
  for (let row = 0; row < count; row++) {
    const move = -(missed[row] as number) - alongRow(program, row, step);
    const product = (products[row] as number) + (multipliers[row] as number) * move;
    slackStep[row] = move;
    multiplierStep[row] = -product / (slack[row] as number);
  }
  return true;
}

/** Mean product of slacks and multipliers after the whole step, as far as it stays inside. */
function foreseenGap({ slack, multipliers, slackStep, multiplierStep }: Iterate): number {
  const shares = [shareInside(slack, slackStep), shareInside(multipliers, multiplierStep)] as const;
  return meanProduct(
    slack.map((value, row) => value + shares[0] * (slackStep[row] as number)),
    multipliers.map((value, row) => value + shares[1] * (multiplierStep[row] as number)),
  );
}

function move(values: Float64Array, step: Float64Array, share: number, least: number): void {
  for (let index = 0; index < values.length; index++) {
    values[index] = Math.max(least, (values[index] as number) + share * (step[index] as number));
  }
}

/**
 * One round of predictor and corrector.
 *
 * @param program the objective and the conditions
 * @param iterate where the method is, measured; moved on
 * @returns false if that fails
 */
export function advance(program: Program, iterate: Iterate): boolean {
  const { unknowns, slack, multipliers, step, slackStep, multiplierStep } = iterate;
  const gap = meanProduct(slack, multipliers);
  const products = slack.map((value, row) => value * (multipliers[row] as number));
  if (!newtonStep(program, iterate, products)) return false;
  const centre = (foreseenGap(iterate) / gap) ** 3 * gap;
  for (let row = 0; row < products.length; row++) {
    const bent = (slackStep[row] as number) * (multiplierStep[row] as number);
    products[row] = (products[row] as number) + bent - centre;
  }
  if (!newtonStep(program, iterate, products)) return false;
  const inside = Math.min(shareInside(slack, slackStep), shareInside(multipliers, multiplierStep));
  const share = inside === 1 ? 1 : STAY_INSIDE * inside;
  move(unknowns, step, share, Number.NEGATIVE_INFINITY);
  move(slack, slackStep, share, Number.MIN_VALUE);
  move(multipliers, multiplierStep, share, Number.MIN_VALUE);
  return true;
}
