import { pathResistance, probeResistance } from '../heat/heat-path.ts';
import { dryOutTemperature } from '../heat/heat-pipes.ts';
import { panelTemperature } from '../heat/panel.ts';
import { rises } from '../heat/part-power.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import type { Kelvins } from '../quantities/dimensions.ts';
import type { Duty, Enclosure, Limit, LimitKind, Part, Skin } from './enclosure.ts';
import type { Machine } from './machine.ts';
import type { PassState } from './pass-state.ts';

/** A temperature that has a limit in a duty. */
export interface AskedLimit {
  /** Name of the part, or of the chamber whose panel it is. */
  readonly subject: string;
  readonly of: LimitKind;
  readonly limit: Kelvins;
  /** The temperature after a pass [K]. */
  readonly found: (state: PassState) => Kelvins;
}

/** Temperature of a probe in the base under a part [K]: what the part has over the share of its path beyond it. */
export function probeTemperature(part: Part, index: number, state: PassState): Kelvins {
  const fins = state.finResistances[index] as number;
  const beyond = pathResistance(part, fins) - probeResistance(part, fins, part.probe ?? 1);
  return (state.partTemperatures[index] as number) - (state.partPowers[index] as number) * beyond;
}

type Reader = (part: Part, index: number, state: PassState) => Kelvins;

const readers: Readonly<Record<Limit['of'], Reader>> = {
  part: (_, index, state) => state.partTemperatures[index] as number,
  air: (_, index, state) => state.partAir[index] as number,
  probe: probeTemperature,
};

/** Temperature up to which the heat pipes of a part carry its heat in a duty [K]; +∞ if it has none. */
function dryOut(part: Part, index: number, duty: Duty): Kelvins {
  if (!part.pipes) return Number.POSITIVE_INFINITY;
  return dryOutTemperature(part.pipes, part, duty.heat[index] as number, duty.room);
}

/** Whether a part's heat pipes dry out in a duty whatever cools them. */
export function driesOut(part: Part, index: number, duty: Duty): boolean {
  return dryOut(part, index, duty) <= duty.room;
}

/**
 * The limits of a part in a duty: those asked for, and the temperature at which its power dries its heat pipes out, if
 * it depends on how well they are cooled.
 *
 * @param part with its limits
 * @param index of the part
 * @param duty the state of use
 */
export function partLimits(part: Part, index: number, duty: Duty): readonly AskedLimit[] {
  const asked = part.limits.map(({ of, temperature }, at): AskedLimit => {
    return {
      subject: part.id,
      of,
      limit: temperature - (duty.lowered?.[index]?.[at] ?? 0),
      found: (state) => readers[of](part, index, state),
    };
  });
  const dry = dryOut(part, index, duty);
  if (!(dry > duty.room && dry < HOPELESS)) return asked;
  const found: AskedLimit['found'] = (state) => readers.part(part, index, state);
  return [...asked, { subject: part.id, of: 'pipes', limit: dry, found }];
}

/** Temperature of the panel of a chamber [K]. */
export function skinTemperature({ chamber, share }: Skin, state: PassState): Kelvins {
  return panelTemperature(state.chambers[chamber] as number, state.chambers[0] as number, share);
}

/** The limit of a chamber's panel, if it has one. */
export function panelLimits({ chambers }: Enclosure, skin: Skin): readonly AskedLimit[] {
  const { limit } = skin;
  if (limit === undefined) return [];
  const subject = chambers[skin.chamber] ?? '';
  return [{ subject, of: 'panel', limit, found: (state) => skinTemperature(skin, state) }];
}

/**
 * All limits of an enclosure in a duty, part by part, then the panels.
 *
 * @param machine any build of the enclosure
 * @param duty the state of use
 */
export function askedLimits({ plant }: Machine, duty: Duty): readonly AskedLimit[] {
  const { enclosure } = plant;
  return [
    ...enclosure.parts.flatMap((part, index) => partLimits(part, index, duty)),
    ...(enclosure.skins ?? []).flatMap((skin) => panelLimits(enclosure, skin)),
  ];
}

/**
 * Whether a build is refused beside all limits: a part runs away, or its heat pipes dry out whatever cools them.
 *
 * @param machine the build
 * @param duty the state of use
 * @returns a function of the state after a pass
 */
export function refusals({ plant }: Machine, duty: Duty): (state: PassState) => boolean {
  const dry = plant.enclosure.parts.some((part, index) => driesOut(part, index, duty));
  return ({ runaways }) => dry || runaways.includes(1);
}

/**
 * Whether something is asked of a part that the air decides: a limit, that its heat pipes carry, or that it does not
 * run away (in a chamber a linear growth does so at any flow or at none).
 */
export function isAsked(part: Part): boolean {
  const mayRunAway = part.seat.kind === 'fins' ? rises(part) : part.leakage !== undefined;
  return part.limits.length > 0 || part.pipes !== undefined || mayRunAway;
}
