import type { CubicMetresPerSecond, Fraction, Metres } from '../quantities/dimensions.ts';
import { evaluateRise, type FanCurve, REFERENCE_DENSITY, type Rise } from './curve.ts';
import type { FanAssumptions } from './fan-assumptions.ts';
import { discArea } from './installation-loss.ts';

/** Fans of a bank that give nothing: air passes where they stand or stood. */
export interface LostFans {
  /** Fans that stand still [-], ≥ 0. */
  readonly dead: number;
  /** Fans taken out, whose holes are open [-], ≥ 0. */
  readonly missing: number;
}

/** Equal fans side by side, of which some are lost. */
export interface MixedBank {
  readonly curve: FanCurve;
  /** Fans that turn [-], ≥ 0. */
  readonly count: number;
  /** Flow that the places of the others let through at 1 Pa and reference density [m³/(s·√Pa)], > 0. */
  readonly conductance: number;
}

/** Rise and slope of a bank, and the flow of each fan that turns: an out-parameter. */
export interface BankRise extends Rise {
  /** [m³/s]; 0 if none turns. */
  fanFlow: CubicMetresPerSecond;
}

/**
 * Flow that the places of lost fans let through at 1 Pa and reference density, together [m³/(s·√Pa)]: a dead fan by
 * the resistance of the stopped one, a missing one by the loss of a hole of the size of its blade circle.
 *
 * Source: definition of a loss coefficient; both coefficients are assumptions as said at {@link FanAssumptions}.
 *
 * @param curve of one fan
 * @param size side of its frame [m], > 0
 * @param lost how many of each kind
 * @param assumptions `lost`, `bladeCircle`
 */
export function lostConductance(
  curve: FanCurve,
  size: Metres,
  lost: LostFans,
  assumptions: FanAssumptions,
): number {
  const stopped = assumptions.lost.stopped * curve.quadratic;
  const hole = (assumptions.lost.hole * REFERENCE_DENSITY) / (2 * discArea(size, assumptions) ** 2);
  return lost.dead / Math.sqrt(stopped) + lost.missing / Math.sqrt(hole);
}

/** Size of the last step, relative to the flows, at which the flow through the lost places counts as found [-]. */
const ACCURACY = 1e-14;
const MOST_STEPS = 80;

const turning: Rise = { rise: 0, slope: 0 };

/** Rise of one turning fan at reference density, left in `turning`; `back` flows back through the lost places. */
function evaluateTurning({ curve, count }: MixedBank, flow: number, back: number, ratio: number): void {
  evaluateRise(curve, (flow + back) / count, ratio, 1, turning);
}

/**
 * Flow back through the lost places [m³/s]: where the rise of the turning fans is what drives it. Newton inside a
 * bracket: the difference falls strictly and has no kink, since both pressures are taken against this flow.
 */
function backFlow(bank: MixedBank, flow: number, ratio: number): number {
  const { conductance, count } = bank;
  evaluateTurning(bank, flow, 0, ratio);
  if (turning.rise === 0) return 0;
  const most = Math.sign(turning.rise) * conductance * Math.sqrt(Math.abs(turning.rise));
  let low = Math.min(0, most);
  let high = Math.max(0, most);
  let back = most;
  for (let step = 0; step < MOST_STEPS; step++) {
    evaluateTurning(bank, flow, back, ratio);
    const missing = turning.rise - (back * Math.abs(back)) / conductance ** 2;
    if (missing > 0) low = back;
    else high = back;
    const slope = turning.slope / count - (2 * Math.abs(back)) / conductance ** 2;
    const newton = back - missing / slope;
    if (Math.abs(newton - back) <= ACCURACY * Math.max(Math.abs(back), Math.abs(flow))) break;
    back = newton > low && newton < high ? newton : 0.5 * (low + high);
  }
  return back;
}

/** All places resist: none turns. */
function evaluateAtRest(conductance: number, flow: number, densityRatio: number, out: BankRise): void {
  const resistance = densityRatio / conductance ** 2;
  out.rise = -resistance * flow * Math.abs(flow);
  out.slope = -2 * resistance * Math.abs(flow);
}

/**
 * Rise of a bank with lost fans and its slope against the flow of the whole bank, without allocating: turning fans
 * and lost places share one pressure difference, and their flows add.
 *
 * Falls with the flow; the slope is zero where the rise is. With all fans lost it is the law of the places alone.
 * Source: derived.
 *
 * @param bank the fans
 * @param flow volume flow through all places at their own density [m³/s], any sign
 * @param ratio speed of the turning fans over full speed [-], ≥ 0
 * @param densityRatio local density over reference density [-], > 0
 * @param out receives rise [Pa], slope [Pa·s/m³] and the flow of each turning fan [m³/s]
 */
export function evaluateMixedRise(
  bank: MixedBank,
  flow: CubicMetresPerSecond,
  ratio: Fraction,
  densityRatio: Fraction,
  out: BankRise,
): void {
  const { curve, count, conductance } = bank;
  if (count === 0 || ratio <= 0) {
    const free = 1 / Math.sqrt(curve.quadratic);
    const total = conductance + count * free;
    evaluateAtRest(total, flow, densityRatio, out);
    out.fanFlow = count === 0 ? 0 : (flow * free) / total;
    return;
  }
  const back = backFlow(bank, flow, ratio);
  evaluateTurning(bank, flow, back, ratio);
  const own = -turning.slope / count;
  const places = (2 * Math.abs(back)) / conductance ** 2;
  out.rise = densityRatio * turning.rise;
  out.slope = -densityRatio * ((own * places) / (own + places));
  out.fanFlow = (flow + back) / count;
}
