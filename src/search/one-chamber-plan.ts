import type { Enclosure } from '../enclosure/enclosure.ts';
import type { Plant } from '../enclosure/machine.ts';
import { fasterIsCooler } from './monotone-airway.ts';

/** An airway with one chamber, at most one leg with fans into it and one out of it. */
export interface OneChamberPlan {
  /** Leg whose fans blow into the chamber; null if there is none. */
  readonly inward: number | null;
  /** Leg whose fans blow out of it; null if there is none. */
  readonly outward: number | null;
}

/** Whether a leg has no place for fans in this plan. */
export function isPassive(plan: OneChamberPlan, leg: number): boolean {
  return leg !== plan.inward && leg !== plan.outward;
}

/**
 * The plan of an airway simple enough to be taken apart at its one chamber; null if it is not.
 *
 * @param plant the enclosure's plan
 */
export function oneChamberPlan(plant: Plant): OneChamberPlan | null {
  const { enclosure } = plant;
  if (enclosure.chambers.length !== 2 || !fasterIsCooler(plant)) return null;
  const fans = enclosure.legs.flatMap((leg, index) =>
    leg.through.some((place) => enclosure.places[place]?.kind === 'bank') ? [index] : [],
  );
  const inward = fans.filter((leg) => enclosure.legs[leg]?.from === 0 && enclosure.legs[leg]?.to === 1);
  const outward = fans.filter((leg) => enclosure.legs[leg]?.from === 1 && enclosure.legs[leg]?.to === 0);
  if (inward.length > 1 || outward.length > 1) return null;
  if (fans.length === 0 || fans.length !== inward.length + outward.length) return null;
  const plan = { inward: inward[0] ?? null, outward: outward[0] ?? null };
  return isHeatOnPassiveLegs(enclosure, plan) ? null : plan;
}

/**
 * Whether a part sits on fins in a leg without fans. What its limit asks of the chamber's pressure may rise or fall with
 * that pressure, and so may what its heat asks of the fans where it comes back into the chamber: the ends of a cell no
 * longer bound what lies between.
 */
function isHeatOnPassiveLegs(enclosure: Enclosure, plan: OneChamberPlan): boolean {
  return enclosure.parts.some(({ seat }) => {
    if (seat.kind !== 'fins') return false;
    const leg = enclosure.legs.findIndex(({ through }) => through.includes(seat.place));
    return isPassive(plan, leg);
  });
}
