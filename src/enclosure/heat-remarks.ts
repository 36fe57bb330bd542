import { pipesCapacity } from '../heat/heat-pipes.ts';
import { touchLimits } from '../heat/panel.ts';
import { ratingNeeded } from '../heat/supply.ts';
import { sustainedHeadroom } from '../heat/supply-headroom.ts';
import type { Fraction, Kelvins, KelvinsPerWatt } from '../quantities/dimensions.ts';
import { roundedQuantity } from '../quantities/rounded.ts';
import { driesOut, type SpoiltPart, skinTemperature, spoiltParts } from './asked-limits.ts';
import type { Part, Skin } from './enclosure.ts';
import { finRemarks } from './fins-outcome.ts';
import { partResistance, runawayResistance } from './loop-gain.ts';
import type { FailureOutcome, PartOutcome } from './outcome.ts';
import type { SolvedPass } from './solved-pass.ts';

/** A part that is hotter gets no air to speak of [K]: aluminium melts at 933 K. */
const AIRLESS: Kelvins = 973.15;

const kelvinsPerWatt = (value: KelvinsPerWatt) => roundedQuantity('thermalResistance', value, 2);
const watts = (value: number) => roundedQuantity('power', value, 3);

function runaway(solved: SolvedPass, part: Part, index: number): string {
  const own = kelvinsPerWatt(partResistance(solved.state, part, index));
  const boundary = kelvinsPerWatt(runawayResistance(solved, part, index));
  return `its power rises with temperature faster than it can be cooled, it runs away: ${own} to its air, the most is ${boundary}`;
}

function dryness({ state }: SolvedPass, part: Part, index: number): string {
  const power = watts(state.partPowers[index] as number);
  const capacity = watts(part.pipes ? pipesCapacity(part.pipes) : 0);
  return `${power} is more than its heat pipes carry, ${capacity}: they dry out, and no fan helps`;
}

function spoiling({ most }: SpoiltPart): string {
  const bears = roundedQuantity('temperature', most, 3);
  return `it has no limit of its own, and gets hotter than the ${bears} that such a part is taken to bear`;
}

/**
 * Why a solved pass is refused beside broken limits, part by part.
 *
 * @param solved a pass that has settled
 */
export function heatFailures(solved: SolvedPass): readonly FailureOutcome[] {
  const { machine, duty, state } = solved;
  const spoilt = spoiltParts(machine, duty).filter(({ excess }) => excess(state) > 0);
  return machine.plant.enclosure.parts.flatMap((part, index) => {
    const runs = state.runaways[index] === 1;
    const reasons = [
      ...(runs ? [runaway(solved, part, index)] : []),
      ...(driesOut(part, index, duty) ? [dryness(solved, part, index)] : []),
      ...(runs ? [] : spoilt.filter((one) => one.part === index).map(spoiling)),
    ];
    return reasons.map((reason) => ({ part: part.id, reason }));
  });
}

/** A part whose power rises with temperature so that little is left before it runs away. */
function gainRemarks(solved: SolvedPass, part: Part, index: number, outcome: PartOutcome): readonly string[] {
  const { loopGain, wholeLoopGain = loopGain } = outcome;
  const { loopGainWarning } = solved.machine.plant.enclosure.assumptions.heat;
  const touchy = Math.max(loopGain, wholeLoopGain) >= loopGainWarning;
  if (!touchy || solved.state.runaways[index] === 1) return [];
  const whole = ` (${wholeLoopGain.toFixed(2)} with all it warms)`;
  const gain = `loop gain ${loopGain.toFixed(2)}${wholeLoopGain - loopGain >= 0.005 ? whole : ''}`;
  const boundary = kelvinsPerWatt(runawayResistance(solved, part, index));
  return [`its power rises with temperature, ${gain}; it runs away above ${boundary} to its air`];
}

function pipeRemarks({ machine, state, duty }: SolvedPass, part: Part, index: number): readonly string[] {
  if (!part.pipes || driesOut(part, index, duty)) return [];
  const load: Fraction = (state.partPowers[index] as number) / pipesCapacity(part.pipes);
  if (load < machine.plant.enclosure.assumptions.heat.pipeWarning) return [];
  const share = roundedQuantity('percent', load, 3);
  return [`its heat pipes carry ${share} of what dries them out; tilted or bent they carry less`];
}

function supplyRemarks({ duty }: SolvedPass, { supply }: Part, index: number): readonly string[] {
  if (supply?.rating === undefined) return [];
  const output = supply.output * (duty.heat[index] as number);
  const { verdict } = sustainedHeadroom(output, supply.rating);
  if (verdict === 'pass') return [];
  if (verdict === 'fail')
    return [`it gives ${watts(output)} for long, more than its rating of ${watts(supply.rating)}`];
  const needed = watts(ratingNeeded(output));
  return [`it gives ${watts(output)} for long, for which it should be rated ${needed} or more`];
}

function skinRemarks({ machine, state }: SolvedPass, skin: Skin): readonly string[] {
  if (skin.material === undefined) return [];
  const { held } = touchLimits[skin.material];
  const temperature = skinTemperature(skin, state);
  if (temperature <= held) return [];
  const chamber = machine.plant.enclosure.chambers[skin.chamber] ?? '';
  const [is, most] = [temperature, held].map((value) => roundedQuantity('temperature', value, 3));
  return [
    `panel of ${chamber}: ${is}, too warm to be held (${skin.material}, ${most}); orientation, no certification`,
  ];
}

/** A part that no air reaches, though it does not run away. */
function airlessRemarks({ state }: SolvedPass, index: number): readonly string[] {
  const hopeless = (state.partTemperatures[index] as number) > AIRLESS;
  return hopeless && state.runaways[index] === 0
    ? ['hardly any air reaches it, nothing carries its heat off']
    : [];
}

/**
 * What a reader should know of the heat in a solved pass: near runaway, heavily loaded heat pipes and supplies, warm
 * panels, fins far from what was measured.
 *
 * @param solved a pass that has settled
 * @param outcomes of its parts, in their order
 */
export function heatRemarks(solved: SolvedPass, outcomes: readonly PartOutcome[]): readonly string[] {
  const { parts, skins = [] } = solved.machine.plant.enclosure;
  const ofParts = parts.flatMap((part, index) => {
    const remarks = [
      ...airlessRemarks(solved, index),
      ...gainRemarks(solved, part, index, outcomes[index] as PartOutcome),
      ...pipeRemarks(solved, part, index),
      ...supplyRemarks(solved, part, index),
    ];
    return remarks.map((remark) => `${part.id}: ${remark}`);
  });
  return [...ofParts, ...skins.flatMap((skin) => skinRemarks(solved, skin)), ...finRemarks(solved)];
}
