import { bracketedRoot } from '../numerics/roots.ts';
import type {
  CubicMetresPerSecond,
  Fraction,
  KelvinDifference,
  Kelvins,
  KelvinsPerWatt,
  Pascals,
  Watts,
} from '../quantities/dimensions.ts';

/** One path through a box with one bank of fans, apart from its intake. */
export interface TestedPath {
  /** Pressure that the fans give at a flow, falling; at full speed or the share of it that is said [-]. */
  readonly fan: (flow: CubicMetresPerSecond, speed: Fraction) => Pascals;
  /** Pressure that all but the intake takes, rising. */
  readonly rest: (flow: CubicMetresPerSecond) => Pascals;
  /** Flow of the fans at full speed against nothing [m³/s]. */
  readonly freeDelivery: CubicMetresPerSecond;
}

/** How a part's temperature above its air follows the flow: R = fixed + scale·(Q/at)^-exponent. */
export interface FlowLawOfResistance {
  /** What no flow takes away [K/W]. */
  readonly fixed: KelvinsPerWatt;
  /** Exponent of the flow [-]; laminar in short channels about 0.5, turbulent 0.8. */
  readonly exponent: number;
  /** Flow at which the rest is `scale` [m³/s]. */
  readonly at: CubicMetresPerSecond;
}

/** A steady temperature, what the part drew and how warm the room was. */
export interface SteadyReading {
  readonly temperature: Kelvins;
  readonly room: Kelvins;
  readonly power: Watts;
}

/** What a test with the panel on and off tells; `undefined` flows or losses do not occur. */
export type PanelTest =
  | {
      readonly ok: true;
      /** Flow with the panel over flow without it [-]. */
      readonly flowRatio: Fraction;
      readonly flowOff: CubicMetresPerSecond;
      readonly flowOn: CubicMetresPerSecond;
      /** Flow-dependent resistance at the flow of reference [K/W]. */
      readonly scale: KelvinsPerWatt;
      /** Loss of the intake with the panel: Δp = loss·Q² [Pa·s²/m⁶]. */
      readonly intakeLoss: number;
    }
  | {
      readonly ok: false;
      readonly reason:
        | 'the fans do not move air through the open path'
        | 'the readings lie below what no flow takes away'
        | 'the panel does not seem to restrict the flow';
    };

/** Standard deviation of one reading of a temperature [K]. Model assumption, no source: a probe and its contact. */
export const READING_DEVIATION: KelvinDifference = 0.5;

/**
 * Rise of a steady reading above the room over its power [K/W]. With the power measured at the same time its dependence on
 * temperature needs no model.
 *
 * Source: definition.
 *
 * @param reading steady: five time constants after the last change; power > 0
 */
export function resistanceOf({ temperature, room, power }: SteadyReading): KelvinsPerWatt {
  return (temperature - room) / power;
}

/**
 * Flow of a path with an intake that takes loss·Q² [m³/s]; undefined if the fans do not blow.
 *
 * Source: balance of pressures.
 *
 * @param path fans and rest
 * @param loss of the intake [Pa·s²/m⁶], ≥ 0
 * @param speed of the fans as a share of full speed [-], > 0
 */
export function pathFlow(path: TestedPath, loss: number, speed: Fraction): CubicMetresPerSecond | undefined {
  const spare = (flow: number) => path.fan(flow, speed) - path.rest(flow) - loss * flow * flow;
  const most = path.freeDelivery * speed;
  const found = bracketedRoot(spare, 0, most, { tolerance: 1e-13 * most });
  return found.ok && found.root > 0 ? found.root : undefined;
}

/**
 * Loss of an intake from one temperature with its panel on and one with it off, at the same speed:
 * Q_on/Q_off = [(R_off − R_0)/(R_on − R_0)]^(1/m), K = (p_fan − p_rest)/Q_on².
 *
 * Source: derived. What the test cannot tell from a restriction: exhaust that is drawn in again only with the panel on,
 * and leaks of the case that open with it; measure the air at the intake, too.
 *
 * @param path fans and rest of the path
 * @param law of the resistance between the room and where the temperature was read
 * @param open loss of the intake without the panel [Pa·s²/m⁶], ≥ 0
 * @param on reading with the panel
 * @param off reading without it
 * @param speed of the fans, the same in both, as a share of full speed [-]
 */
export function panelTest(
  path: TestedPath,
  law: FlowLawOfResistance,
  open: number,
  on: SteadyReading,
  off: SteadyReading,
  speed: Fraction = 1,
): PanelTest {
  const [withIt, without] = [on, off].map((reading) => resistanceOf(reading) - law.fixed) as [number, number];
  if (!(withIt > 0 && without > 0)) {
    return { ok: false, reason: 'the readings lie below what no flow takes away' };
  }
  const flowOff = pathFlow(path, open, speed);
  if (flowOff === undefined) return { ok: false, reason: 'the fans do not move air through the open path' };
  const flowRatio = (without / withIt) ** (1 / law.exponent);
  if (!(flowRatio < 1)) return { ok: false, reason: 'the panel does not seem to restrict the flow' };
  const flowOn = flowRatio * flowOff;
  return {
    ok: true,
    flowRatio,
    flowOff,
    flowOn,
    scale: without * (flowOff / law.at) ** law.exponent,
    intakeLoss: (path.fan(flowOn, speed) - path.rest(flowOn)) / flowOn ** 2,
  };
}

/**
 * Difference of two readings from which on it is more than chance [K]: two standard deviations of the difference. A
 * smaller one means "cannot be told", not "no restriction".
 *
 * Source: sum of the variances of two independent readings, any text on statistics.
 *
 * @param deviation standard deviation of one reading [K], ≥ 0
 */
export function tellingDifference(deviation: KelvinDifference = READING_DEVIATION): KelvinDifference {
  return 2 * Math.SQRT2 * deviation;
}
