/** Exponent of a fan's sound energy in its speed: 55 dB a decade. Shape of the local model only. */
const ENERGY_EXPONENT = 5.5;
/** Exponent with which excess temperatures fall with speed, near enough for a local model. */
const COOLING_EXPONENT = 0.7;
const SWEEPS = 25;
const MULTIPLIER_STEPS = 40;

/** Local picture of a trial around its present speeds, in the logarithms of the speeds. */
export interface LocalModel {
  /** Derivative of the sound energy by each log speed. */
  readonly energySlopes: Float64Array;
  /** Excess of each limit [K]. */
  readonly excess: Float64Array;
  /** Derivative of each limit's excess by each log speed [K], row by limit. */
  readonly excessSlopes: readonly Float64Array[];
  /** Least and greatest step of each log speed. */
  readonly low: Float64Array;
  readonly high: Float64Array;
}

function excessAt(model: LocalModel, limit: number, step: Float64Array): number {
  const slopes = model.excessSlopes[limit] as Float64Array;
  let sum = model.excess[limit] as number;
  for (let bank = 0; bank < step.length; bank++) {
    const delta = step[bank] as number;
    const slope = slopes[bank] as number;
    sum += slope < 0 ? (slope * (1 - Math.exp(-COOLING_EXPONENT * delta))) / COOLING_EXPONENT : slope * delta;
  }
  return sum;
}

/** Step at which what speed costs meets what its cooling is worth; without bound where one of them is nothing. */
function wantedStep(cost: number, cooling: number, exponent: number): number {
  // Faster may even be quieter: a loaded fan relieved by another, or one that takes work off it.
  if (cost <= 0) return Number.POSITIVE_INFINITY;
  return cooling > 0 ? Math.log(cooling / cost) / exponent : Number.NEGATIVE_INFINITY;
}

/** Step that minimises energy plus weighted excess, each bank by itself. */
function stepFor(model: LocalModel, weights: Float64Array, step: Float64Array): void {
  const total = ENERGY_EXPONENT + COOLING_EXPONENT;
  for (let bank = 0; bank < step.length; bank++) {
    let cooling = 0;
    let heating = 0;
    for (let limit = 0; limit < weights.length; limit++) {
      const slope = (model.excessSlopes[limit] as Float64Array)[bank] as number;
      const weighted = (weights[limit] as number) * slope;
      if (slope < 0) cooling -= weighted;
      else heating += weighted;
    }
    const cost = (model.energySlopes[bank] as number) + heating;
    const wanted = wantedStep(cost, cooling, total);
    step[bank] = Math.min(model.high[bank] as number, Math.max(model.low[bank] as number, wanted));
  }
}

/** Weight of one limit that just holds it, the others kept; 0 if it holds without. */
function settleWeight(model: LocalModel, weights: Float64Array, limit: number, step: Float64Array): void {
  const excessWith = (weight: number): number => {
    weights[limit] = weight;
    stepFor(model, weights, step);
    return excessAt(model, limit, step);
  };
  if (excessWith(0) <= 0) return;
  let scale = 0;
  for (const slope of model.energySlopes) scale = Math.max(scale, Math.abs(slope));
  let low = Math.log(scale * 1e-9 + 1e-300);
  let high = Math.log(scale * 1e9 + 1e-300);
  if (excessWith(Math.exp(high)) > 0) return;
  for (let count = 0; count < MULTIPLIER_STEPS && high - low > 1e-7; count++) {
    const middle = 0.5 * (low + high);
    if (excessWith(Math.exp(middle)) > 0) low = middle;
    else high = middle;
  }
  weights[limit] = Math.exp(high);
}

/**
 * Step of the log speeds that minimises a local model of the sound energy subject to local models of the
 * limits. Both are separable by bank, so the dual is solved one limit at a time.
 *
 * @param model slopes and bounds around the present speeds
 * @returns the step of each log speed [-]
 */
export function separableStep(model: LocalModel): Float64Array {
  const step = new Float64Array(model.energySlopes.length);
  const weights = new Float64Array(model.excess.length);
  const sweeps = weights.length > 1 ? SWEEPS : 1;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    let change = 0;
    for (let limit = 0; limit < weights.length; limit++) {
      const before = weights[limit] as number;
      settleWeight(model, weights, limit, step);
      change = Math.max(change, Math.abs((weights[limit] as number) - before) / (before + 1e-300));
    }
    if (change < 1e-6) break;
  }
  stepFor(model, weights, step);
  return step;
}
