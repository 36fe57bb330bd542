import { pathResistance, probeResistance } from '../heat/heat-path.ts';
import { dryOutTemperature } from '../heat/heat-pipes.ts';
import { panelTemperature } from '../heat/panel.ts';
import { rises, settledPart } from '../heat/part-power.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import type { Fraction, KelvinDifference, Kelvins } from '../quantities/dimensions.ts';
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
export function askedLimits({ plant }: Pick<Machine, 'plant'>, duty: Duty): readonly AskedLimit[] {
  const { enclosure } = plant;
  return [
    ...enclosure.parts.flatMap((part, index) => partLimits(part, index, duty)),
    ...(enclosure.skins ?? []).flatMap((skin) => panelLimits(enclosure, skin)),
  ];
}

/** Whether something is the case after a pass. */
type Check = (state: PassState) => boolean;

/**
 * Whether a build gives up beside all limits: a part runs away, or its heat pipes dry out whatever cools them.
 *
 * @param machine the build
 * @param duty the state of use
 * @returns a function of the state after a pass
 */
export function collapses({ plant }: Machine, duty: Duty): Check {
  const dry = plant.enclosure.parts.some((part, index) => driesOut(part, index, duty));
  return ({ runaways }) => dry || runaways.includes(1);
}

/** Whether a part keeps below a temperature as long as its air holds a limit: in a chamber nothing else warms it. */
function isKeptBelow(most: Kelvins, part: Part, factor: Fraction): boolean {
  const air = part.limits.find(({ of }) => of === 'air');
  if (!air || part.seat.kind !== 'chamber') return false;
  return settledPart(part, factor, air.temperature, pathResistance(part, 0)) <= most;
}

/** How much hotter than it bears a part without a limit of its own is. */
export interface SpoiltPart {
  /** Index of the part. */
  readonly part: number;
  /** What it is taken to bear [K]. */
  readonly most: Kelvins;
  /** Temperature above that after a pass [K]; ≤ 0 if the part bears it. */
  readonly excess: (state: PassState) => KelvinDifference;
}

/**
 * The parts that have no limit of their own and may get hotter than anything bears.
 *
 * @param machine the build
 * @param duty the state of use
 */
export function spoiltParts({ plant }: Machine, duty: Duty): readonly SpoiltPart[] {
  const { parts, assumptions } = plant.enclosure;
  const most = assumptions.heat.hottestPart;
  return parts.flatMap((part, index) => {
    const isLimited = part.limits.some(({ of }) => of === 'part');
    if (isLimited || isKeptBelow(most, part, duty.heat[index] as number)) return [];
    const excess: SpoiltPart['excess'] = (state) => (state.partTemperatures[index] as number) - most;
    return [{ part: index, most, excess }];
  });
}

/**
 * Whether a build is refused beside all limits: it collapses, or a part gets hotter than it is taken to bear.
 *
 * @param machine the build
 * @param duty the state of use
 * @returns a function of the state after a pass
 */
export function refusals(machine: Machine, duty: Duty): Check {
  const collapsed = collapses(machine, duty);
  const spoilt = spoiltParts(machine, duty);
  return (state) => collapsed(state) || spoilt.some(({ excess }) => excess(state) > 0);
}

/**
 * Whether something is asked of a part that the air decides: a limit, that its heat pipes carry, or that it does not
 * run away (in a chamber a linear growth does so at any flow or at none).
 */
export function isAsked(part: Part): boolean {
  const mayRunAway = part.seat.kind === 'fins' ? rises(part) : part.leakage !== undefined;
  return part.limits.length > 0 || part.pipes !== undefined || mayRunAway;
}
