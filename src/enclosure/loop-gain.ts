import { pathResistance } from '../heat/heat-path.ts';
import { partPowerSlope, runawayBoundary } from '../heat/part-power.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import type { Fraction, KelvinsPerWatt, Watts } from '../quantities/dimensions.ts';
import type { Part } from './enclosure.ts';
import { assemble } from './machine.ts';
import { createPass } from './pass.ts';
import { sharedPower } from './pass-heat.ts';
import { newPassState, type PassState } from './pass-state.ts';
import type { SolvedPass } from './solved-pass.ts';

/** Change of the held power that the loop is opened with, as a share of it [-]. */
const NUDGE: Fraction = 1e-3;
/** The same where a part draws hardly anything [W]. */
const LEAST_NUDGE: Watts = 1e-3;
/** Accuracy of the temperatures compared [K]: far below what the nudge moves. */
const TOLERANCE = 1e-10;

/** Growth of a part's power with its temperature at the present power [W/K]. */
function slopeOf({ duty, state }: SolvedPass, part: Part, index: number): number {
  return partPowerSlope(part, duty.heat[index] as number, state.partTemperatures[index] as number);
}

/** Resistance from a part to its air [K/W]. */
export function partResistance(state: PassState, part: Part, index: number): KelvinsPerWatt {
  const fins = state.finResistances[index] as number;
  return fins + pathResistance(part, fins);
}

/** Resistance from which on a part runs away above its present air, warmed by what else sits on its fins [K/W]. */
export function runawayResistance(
  { machine, duty, state }: SolvedPass,
  part: Part,
  index: number,
): KelvinsPerWatt {
  const shared = (state.finResistances[index] as number) * sharedPower(machine, index, state);
  const air = (state.partAir[index] as number) + shared;
  return runawayBoundary(part, duty.heat[index] as number, air)?.resistance ?? Number.POSITIVE_INFINITY;
}

/**
 * Loop gain of a part alone [-]: its resistance to its air, times the growth of its power at the present power. Where
 * it runs away it has none; then the resistance over the greatest one with which it would not, at most a million.
 */
export function localLoopGain(solved: SolvedPass, part: Part, index: number): Fraction {
  const resistance = partResistance(solved.state, part, index);
  if (solved.state.runaways[index] === 1) {
    return Math.min(HOPELESS, resistance / runawayResistance(solved, part, index));
  }
  return resistance * slopeOf(solved, part, index);
}

/**
 * Loop gain of the whole loop through a part [-]: what its temperature answers to a change of its power, by way of its
 * own resistance and of all it warms (the air that comes back, its chamber, its neighbours, which follow with their own
 * power), times the growth of its power. Disturbances are amplified by 1/(1 − gain).
 *
 * Found by holding the power a little higher and solving air and heat again.
 *
 * @param solved a pass that has settled
 * @param part its heat
 * @param index of the part
 * @returns undefined if there is no answer with the power held
 */
export function wholeLoopGain(solved: SolvedPass, part: Part, index: number): Fraction | undefined {
  const { conditions, ratios, state } = solved;
  const slope = slopeOf(solved, part, index);
  if (slope === 0) return 0;
  const power = state.partPowers[index] as number;
  // A machine of its own: passes leave their air in the legs.
  const machine = assemble(solved.machine.plant, solved.machine.build);
  const pass = createPass(machine);
  const opened = newPassState(machine);
  const temperatureAt = (held: Watts): number | undefined => {
    const failure = pass({ ...conditions, held: new Map([[index, held]]) }, ratios, opened, TOLERANCE);
    return failure ? undefined : opened.partTemperatures[index];
  };
  const nudge = Math.max(LEAST_NUDGE, NUDGE * power);
  const before = temperatureAt(power);
  const after = temperatureAt(power + nudge);
  if (before === undefined || after === undefined) return undefined;
  return ((after - before) / nudge) * slope;
}
