import { evaluateRise, type FanCurve, REFERENCE_DENSITY } from '../fan/curve.ts';
import { type BankRise, evaluateMixedRise, type MixedBank } from '../fan/mixed-bank.ts';
import type { Fraction, KilogramsPerCubicMetre, KilogramsPerSecond } from '../quantities/dimensions.ts';

/** Equal fans side by side in a leg, blowing along it. */
export interface BankStage {
  readonly kind: 'bank';
  readonly curve: FanCurve;
  /** Fans that turn [-]. */
  readonly count: number;
  /** Factor on the positive pressure rise while the next bank upstream in this leg turns [-], 0 to 1. */
  readonly derating: Fraction;
  /** What the places of fans that do not turn let through [m³/(s·√Pa)]; absent if all turn. */
  readonly conductance?: number;
  /** Inertial coefficient of walls close by [1/m⁴]; absent if there are none. */
  readonly walls?: number;
}

function isMixed(bank: BankStage): bank is BankStage & MixedBank {
  return bank.conductance !== undefined;
}

/**
 * Rise of a bank [Pa], its slope against the mass flow [Pa·s/kg] and the flow of each fan [m³/s], left in `out`.
 * Walls are not in it.
 *
 * @param bank the fans
 * @param flow mass flow through the bank [kg/s], either sign
 * @param ratio speed over full speed [-], ≥ 0
 * @param density of the local air [kg/m³]
 * @param derating in force [-]
 * @param out receives the results
 */
export function evaluateBank(
  bank: BankStage,
  flow: KilogramsPerSecond,
  ratio: Fraction,
  density: KilogramsPerCubicMetre,
  derating: Fraction,
  out: BankRise,
): void {
  const densityRatio = density / REFERENCE_DENSITY;
  let scale = density;
  if (isMixed(bank)) {
    evaluateMixedRise(bank, flow / density, ratio, densityRatio, out);
  } else {
    scale *= bank.count;
    out.fanFlow = flow / scale;
    evaluateRise(bank.curve, out.fanFlow, ratio, densityRatio, out);
  }
  if (out.rise > 0) {
    out.rise *= derating;
    out.slope *= derating;
  }
  out.slope /= scale;
}
