import type { Bank, BankPlace } from '../../enclosure/enclosure.ts';
import type { BankOutcome, DutyOutcome } from '../../enclosure/outcome.ts';
import { bankIn } from '../../enclosure/stages.ts';
import { REFERENCE_DENSITY } from '../../fan/curve.ts';
import type { FanModel } from '../../fan/fan-model.ts';
import type { CubicMetresPerSecond, Decibels, Metres, Pascals } from '../../quantities/dimensions.ts';
import { riseAt, slowestGiving } from '../../search/slowest-speed.ts';
import { levelAtRatio, speedModel, workingPointTerm } from '../../sound/fan-noise.ts';
import { energy, levelOf } from '../../sound/levels.ts';
import type { SoundAssumptions } from '../../sound/sound-assumptions.ts';
import type { Situation } from './lever.ts';

/** Frames of one nominal size differ by no more than this [m]. */
const SAME_FRAME: Metres = 0.0015;

/** A flow that fans have to lift by a pressure. */
export interface Need {
  readonly flow: CubicMetresPerSecond;
  readonly rise: Pascals;
}

/** Fans of a build, with what they are asked. */
export interface BankThere {
  readonly index: number;
  readonly place: BankPlace;
  readonly bank: Bank;
  readonly need: Need;
}

/** The duty whose speeds count for choosing a fan: the loudest that lasts, or the first. */
function tellingDuty({ outcome }: Situation): DutyOutcome | undefined {
  const lasting = outcome.duties.filter(({ share }) => share > 0);
  return [...lasting].sort((one, other) => other.level - one.level)[0] ?? outcome.duties[0];
}

function needOf({ flow, pressureRise }: BankOutcome): Need {
  return { flow, rise: pressureRise };
}

/**
 * The running banks of a build, each with the flow and the rise it gives now.
 *
 * @param situation the build
 */
export function banksIn(situation: Situation): readonly BankThere[] {
  const { enclosure, build } = situation;
  const duty = tellingDuty(situation);
  return enclosure.places.flatMap((place, index) => {
    const bank = bankIn(enclosure, build, index);
    const shown = duty?.banks.find((each) => each.place === place.id);
    if (place.kind !== 'bank' || !bank || !shown || !(shown.flow > 0)) return [];
    return [{ index, place, bank, need: needOf(shown) }];
  });
}

/** Depths differ by less than this only through rounding [m]. */
const ROUNDING: Metres = 1e-6;

/** Whether a fan is no deeper than a place. */
export function fitsDepth(fan: FanModel, place: BankPlace): boolean {
  return fan.depth <= place.depth + ROUNDING;
}

/** Whether two fans have the same frame, but for how makers round it. */
export function isSameSize(one: FanModel, other: FanModel): boolean {
  return Math.abs(one.size - other.size) <= SAME_FRAME;
}

/**
 * Level of a bank at the slowest speed at which it lifts a flow by a rise, before anything of its surroundings [dB];
 * infinite if it cannot. Air of 1.2 kg/m³: good enough to choose whom to try.
 */
function levelFor(bank: Bank, { flow, rise }: Need, sound: SoundAssumptions): Decibels {
  const massFlow = flow * REFERENCE_DENSITY;
  if (riseAt(bank, 1, massFlow, REFERENCE_DENSITY) < rise) return Number.POSITIVE_INFINITY;
  const { fan, count } = bank;
  const ratio = slowestGiving(bank, rise, massFlow, REFERENCE_DENSITY);
  const share = flow / (count * ratio * fan.curve.freeDelivery);
  const level = levelAtRatio(speedModel(fan.ratings, fan.fullSpeed, sound), ratio);
  return levelOf(count * (energy(level + workingPointTerm(share, sound)) + energy(sound.fanFloor)));
}

/**
 * The bank that does with the least noise what is asked, of many.
 *
 * @param situation whose assumptions count
 * @param banks to choose from; of equals the first
 * @param need flow [m³/s] and rise [Pa]
 * @returns undefined if none can
 */
export function quietestFor({ enclosure }: Situation, banks: readonly Bank[], need: Need): Bank | undefined {
  let best: { readonly bank: Bank; readonly level: Decibels } | undefined;
  for (const bank of banks) {
    const level = levelFor(bank, need, enclosure.assumptions.sound);
    if (Number.isFinite(level) && !(best && best.level <= level)) best = { bank, level };
  }
  return best?.bank;
}
