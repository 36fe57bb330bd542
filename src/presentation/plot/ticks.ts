/** A scale of a plot. */
export type ScaleKind = 'linear' | 'log';

/** Round steps within a decade. */
const STEPS = [1, 2, 5, 10] as const;

function roundStep(rough: number): number {
  const decade = 10 ** Math.floor(Math.log10(rough));
  const step = STEPS.find((each) => each * decade >= rough * (1 - 1e-9)) ?? 10;
  return step * decade;
}

function decimalsOf(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}

/** A round number on an axis. */
export interface Tick {
  readonly value: number;
  readonly text: string;
}

function linearTicks(low: number, high: number, most: number): readonly Tick[] {
  const step = roundStep((high - low) / Math.max(1, most - 1));
  const decimals = decimalsOf(step);
  const ticks: Tick[] = [];
  for (let index = Math.ceil(low / step - 1e-9); index * step <= high + 1e-9 * step; index++) {
    const value = index * step;
    ticks.push({ value, text: (Math.abs(value) < step / 2 ? 0 : value).toFixed(decimals) });
  }
  return ticks;
}

function logTicks(low: number, high: number, most: number): readonly Tick[] {
  const all: Tick[] = [];
  for (let decade = Math.floor(Math.log10(low)); decade <= Math.log10(high); decade++) {
    for (const step of [1, 2, 5]) {
      const value = step * 10 ** decade;
      if (value < low * (1 - 1e-9) || value > high * (1 + 1e-9)) continue;
      all.push({ value, text: value.toFixed(Math.max(0, -decade)) });
    }
  }
  return all.length >= 2 && all.length <= most ? all : linearTicks(low, high, most);
}

/**
 * Round numbers along an axis: 1, 2 or 5 times a power of ten apart; on a logarithmic axis 1, 2 and 5 of every decade.
 *
 * @param low least value shown [any unit]
 * @param high greatest value shown, > low [the same unit]; both > 0 on a logarithmic axis
 * @param most ticks [-], ≥ 2
 * @param scale of the axis
 */
export function ticksOf(
  low: number,
  high: number,
  most: number,
  scale: ScaleKind = 'linear',
): readonly Tick[] {
  if (!(high > low) || !Number.isFinite(high - low)) return [];
  return scale === 'log' && low > 0 ? logTicks(low, high, most) : linearTicks(low, high, most);
}
