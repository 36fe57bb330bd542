import type { Duty, Enclosure, Limit, Part } from '../enclosure/enclosure.ts';
import { plantOf } from '../enclosure/machine.ts';
import { statedFor, UNCERTAINTIES, type Uncertainties } from '../enclosure/uncertainties.ts';
import { BOX_UNCERTAINTY } from '../fan/box-figures.ts';
import type { FanModel } from '../fan/fan-model.ts';
import { partPower } from '../heat/part-power.ts';
import type { Fraction, KelvinDifference } from '../quantities/dimensions.ts';
import { fasterIsCooler } from '../search/monotone-airway.ts';
import { normalQuantile } from '../sound/normal-distribution.ts';
import { HALF_WIDTH } from './doubt.ts';

/** Share of each spread that is counted on [-]: what warmer air does to flow takes off or adds some hundredths. */
const COUNTED: Fraction = 0.9;
const HALVINGS = 50;

/** Half-widths that every build of an enclosure has, whatever it is made of. */
interface Common {
  /** Of the room's temperature [K]. */
  readonly room: KelvinDifference;
  /** Of a rise above the room, by what warms the air [-]. */
  readonly heat: Fraction;
  /** Of a rise of air above the room, by what all fans are off alike [-]. */
  readonly flow: Fraction;
}

/** Least spread of a rise by its causes, fans included, however it is divided among them [-]. */
function heatSpread({ parts }: Enclosure, sizes: Uncertainties): Fraction {
  const shares = [...parts.map(({ id }) => statedFor(sizes.heat, id)), sizes.fanPower];
  return Math.min(...shares.map((share) => 1 - 1 / (1 + share))) / Math.sqrt(shares.length);
}

/** How much less flow a fan may give, at least [-]. */
function leastLoss({ id, curve, provenance }: FanModel, sizes: Uncertainties): Fraction {
  const below = (share: number): number => 1 - 1 / (1 + share);
  if (Object.hasOwn(sizes.curve.of, id)) return below(sizes.curve.of[id] as number);
  if (!curve.synthesised)
    return below(provenance === 'measured' ? sizes.curve.measured : sizes.curve.datasheet);
  if (sizes.curve.box !== undefined) return below(sizes.curve.box);
  return -Math.max(BOX_UNCERTAINTY.nearShutOff.low, BOX_UNCERTAINTY.nearFreeDelivery.low);
}

/** Least spread of a rise of air by what all fans have in common: air that flows slower gets warmer in proportion. */
function flowSpread({ places, skins = [], assumptions }: Enclosure, sizes: Uncertainties): Fraction {
  // What leaves by the walls does not depend on the flow.
  if (skins.length > 0) return 0;
  const fans = places.flatMap((place) =>
    place.kind === 'bank' ? place.options.flatMap((bank) => (bank ? [bank.fan] : [])) : [],
  );
  if (fans.length === 0) return 0;
  const least = Math.min(...fans.map((fan) => leastLoss(fan, sizes)));
  const among = Math.min(1, Math.max(0, assumptions.sound.correlation.otherModel));
  return 1 / (1 - least) ** Math.sqrt(among) - 1;
}

function commonOf(enclosure: Enclosure, sizes: Uncertainties): Common {
  const { legs } = enclosure;
  // Where warm air helps itself along, more heat also means more flow; and faster fans must cool for slower to warm.
  const rising = legs.some(({ rise }) => rise);
  const monotone = !rising && fasterIsCooler(plantOf(enclosure));
  return {
    room: sizes.room,
    heat: rising ? 0 : heatSpread(enclosure, sizes),
    flow: monotone ? flowSpread(enclosure, sizes) : 0,
  };
}

/** Spread of the way from the fins or the air to a part, of what is fixed [K]: the same in every build. */
function fixedSpread(part: Part, factor: number, duty: Duty, sizes: Uncertainties): KelvinDifference {
  const share = statedFor(sizes.fixed, part.id);
  return partPower(part, factor, duty.room) * part.resistance * (1 - 1 / (1 + share));
}

/** Least margin [K] that is no less than so many deviations of what it leaves of the headroom. */
function sureMargin(
  headroom: number,
  spreadOf: (rise: number) => number,
  deviations: number,
): KelvinDifference {
  let low = 0;
  let high = Math.max(0, headroom);
  for (let halving = 0; halving < HALVINGS; halving++) {
    const margin = (low + high) / 2;
    const needed = (deviations * COUNTED * spreadOf(headroom - margin)) / HALF_WIDTH;
    if (margin < needed) low = margin;
    else high = margin;
  }
  return low;
}

/**
 * An enclosure whose limits are lowered by what every build needs in hand to hold them with a given probability: a
 * build that holds the limits as surely as asked holds these. So whatever bounds builds of this enclosure from below
 * bounds those that are sure enough.
 *
 * A build that holds all limits with that probability holds each with no less, so each has its own spread times the
 * quantile in hand. No spread is smaller than that counted here: the room moves every temperature as it is, heat moves
 * a rise by a share of it, and so do fans that all give less; what is fixed has its own.
 *
 * Source: derived, for the linear response of `responseOf`.
 *
 * @param enclosure the scenario
 * @param confidence probability asked for [-], above 0.5, below 1
 */
export function withSureMargins(enclosure: Enclosure, confidence: Fraction): Enclosure {
  // A part that gives off less the warmer it is makes little of what warms it.
  if (enclosure.parts.some(({ slope }) => slope < 0)) return enclosure;
  const sizes = enclosure.uncertainties ?? UNCERTAINTIES;
  const deviations = Math.max(0, normalQuantile(confidence));
  const common = commonOf(enclosure, sizes);
  const lowered = (part: Part, factor: number, { of, temperature }: Limit, duty: Duty): KelvinDifference => {
    const fixed = of === 'part' ? fixedSpread(part, factor, duty, sizes) : 0;
    const flow = of === 'air' ? common.flow : 0;
    const spreadOf = (rise: number): number =>
      Math.hypot(common.room, common.heat * rise, flow * rise, fixed);
    // The asked margin counts beside that of the probability, not on top of it.
    return Math.max(0, sureMargin(temperature - duty.room, spreadOf, deviations) - enclosure.margin);
  };
  return {
    ...enclosure,
    duties: enclosure.duties.map((duty) => ({
      ...duty,
      lowered: enclosure.parts.map((part, index) =>
        part.limits.map((limit) => lowered(part, duty.heat[index] ?? 1, limit, duty)),
      ),
    })),
  };
}
