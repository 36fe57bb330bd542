import { rises } from '../heat/part-power.ts';
import { pointFailures } from './asked-points.ts';
import { bankRemarks } from './bank-remarks.ts';
import { soundOutcome } from './duty-sound.ts';
import type { Duty } from './enclosure.ts';
import { heatBudget } from './heat-outcome.ts';
import { heatFailures, heatRemarks } from './heat-remarks.ts';
import { legOutcome } from './leg-outcome.ts';
import type { Machine } from './machine.ts';
import { levelOfEnergy } from './noise.ts';
import type { ChamberOutcome, DutyOutcome, PanelOutcome, PartOutcome } from './outcome.ts';
import { panelOutcomes } from './panel-outcome.ts';
import { partOutcomes } from './part-outcome.ts';
import { createPass, type PassFailure } from './pass.ts';
import { type Conditions, conditionsOf, newPassState } from './pass-state.ts';
import { chamberTemperature, type SolvedPass } from './solved-pass.ts';
import { soundSources } from './sound-sources.ts';
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

/** Why air and heat do not settle: whether they would if no power rose with temperature. */
function reasonOf(
  machine: Machine,
  conditions: Conditions,
  ratios: Float64Array,
  failure: PassFailure,
): PassFailure {
  if (failure !== 'air and heat do not settle') return failure;
  const { parts } = machine.plant.enclosure;
  const held = new Map(
    parts.flatMap((part, index) =>
      rises(part) ? [[index, part.power * (conditions.heat[index] as number)] as const] : [],
    ),
  );
  const calm = createPass(machine)({ ...conditions, held }, ratios, newPassState(machine), REPORT_TOLERANCE);
  if (held.size === 0 || calm) return failure;
  return 'the parts run away: their power rises with temperature about as fast as the air cools them, or faster';
}

/** The limit with the least margin. */
function tightestOf(parts: readonly PartOutcome[], panels: readonly PanelOutcome[]): DutyOutcome['tightest'] {
  const all = [...parts, ...panels.map(({ chamber, limits }) => ({ part: chamber, limits }))].flatMap(
    ({ part, limits }) => limits.map((limit) => ({ part, ...limit })),
  );
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
  if (failure) return reasonOf(machine, conditions, ratios, failure);
  const solved: SolvedPass = { machine, duty, conditions, ratios, state };
  const parts = partOutcomes(solved);
  const banks = machine.banks.map((bank, index) => bankOutcome(solved, bank, index));
  const sources = soundSources(solved);
  const panels = panelOutcomes(solved);
  const failures = [...heatFailures(solved), ...pointFailures(banks, enclosure.asks)];
  const tightest = tightestOf(parts, panels);
  return {
    duty: duty.id,
    share: duty.share,
    room: duty.room,
    adequate: failures.length === 0 && (!tightest || tightest.margin >= enclosure.margin - 1e-6),
    banks,
    legs: enclosure.legs.map((leg, index) => legOutcome(solved, leg, index)),
    chambers: chamberOutcomes(solved),
    parts,
    panels,
    failures,
    ...(tightest ? { tightest } : {}),
    sources: sourceOutcomes(machine, sources),
    level: levelOfEnergy(sources.reduce((sum, { energy }) => sum + energy, 0)),
    sound: soundOutcome(solved, sources),
    fanPower: banks.reduce((sum, bank) => sum + bank.power, 0),
    ...heatBudget(solved),
    remarks: [...heatRemarks(solved, parts), ...bankRemarks(machine.banks, banks)],
  };
}
