import { LOOP_GAIN_WARNING } from '../heat/part-temperature.ts';
import type { Duty } from './enclosure.ts';
import { heatBudget } from './heat-outcome.ts';
import { legOutcome } from './leg-outcome.ts';
import type { Machine } from './machine.ts';
import { levelOfEnergy } from './noise.ts';
import type { BankOutcome, ChamberOutcome, DutyOutcome, PartOutcome } from './outcome.ts';
import { partOutcomes } from './part-outcome.ts';
import { createPass, type PassFailure } from './pass.ts';
import { conditionsOf, newPassState } from './pass-state.ts';
import { chamberTemperature, type SolvedPass } from './solved-pass.ts';
import { bankOutcome, sourceOutcomes } from './source-outcome.ts';

/** Accuracy of the temperatures that are reported [K]. */
const REPORT_TOLERANCE = 1e-9;

function chamberOutcomes(solved: SolvedPass): readonly ChamberOutcome[] {
  const { machine, state } = solved;
  return machine.plant.enclosure.chambers.map((name, index) => ({
    chamber: name,
    pressure: state.network.pressures[index] as number,
    temperature: chamberTemperature(solved, index),
  }));
}

function remarksOf(parts: readonly PartOutcome[], banks: readonly BankOutcome[]): readonly string[] {
  return [
    ...parts
      .filter(({ loopGain: gain }) => gain >= LOOP_GAIN_WARNING)
      .map(({ part, loopGain: gain }) =>
        gain >= 1
          ? `${part}: its power rises with temperature faster than it can be cooled, it runs away`
          : `${part}: its power rises with temperature, loop gain ${gain.toFixed(2)}`,
      ),
    ...banks
      .filter(({ ratio }) => ratio < 0.3)
      .map(({ place }) => `${place}: below 30 % speed the fan laws are uncertain`),
  ];
}

/** The limit with the least margin. */
function tightestOf(parts: readonly PartOutcome[]): DutyOutcome['tightest'] {
  const all = parts.flatMap(({ part, limits }) => limits.map((limit) => ({ part, ...limit })));
  return all.reduce<DutyOutcome['tightest']>(
    (least, limit) => (!least || limit.margin < least.margin ? limit : least),
    undefined,
  );
}

/**
 * Everything about a build in one duty at given speeds.
 *
 * @param machine the build
 * @param duty the state of use
 * @param ratios speed of each bank as a share of full speed [-]
 * @returns the outcome, or why there is none
 */
export function dutyOutcome(machine: Machine, duty: Duty, ratios: Float64Array): DutyOutcome | PassFailure {
  const { enclosure } = machine.plant;
  const conditions = conditionsOf(enclosure, duty);
  const state = newPassState(machine);
  const failure = createPass(machine)(conditions, ratios, state, REPORT_TOLERANCE);
  if (failure) return failure;
  const solved: SolvedPass = { machine, duty, conditions, ratios, state };
  const parts = partOutcomes(solved);
  const banks = machine.banks.map((bank, index) => bankOutcome(solved, bank, index));
  const { sources, energy } = sourceOutcomes(solved);
  const tightest = tightestOf(parts);
  return {
    duty: duty.id,
    share: duty.share,
    room: duty.room,
    adequate: !tightest || tightest.margin >= enclosure.margin - 1e-6,
    banks,
    legs: enclosure.legs.map((leg, index) => legOutcome(solved, leg, index)),
    chambers: chamberOutcomes(solved),
    parts,
    ...(tightest ? { tightest } : {}),
    sources,
    level: levelOfEnergy(energy),
    fanPower: banks.reduce((sum, bank) => sum + bank.power, 0),
    ...heatBudget(solved),
    remarks: remarksOf(parts, banks),
  };
}
