import { effectsOf } from '../airway/confluence.ts';
import { isAsked } from '../enclosure/asked-limits.ts';
import { isChimney } from '../enclosure/chimney.ts';
import { type Enclosure, type Leg, OUTSIDE } from '../enclosure/enclosure.ts';
import type { Plant } from '../enclosure/machine.ts';

/** Legs in which fans may stand. */
function bankLegs(enclosure: Enclosure): readonly number[] {
  return enclosure.legs.flatMap((leg, index) =>
    leg.through.some((place) => enclosure.places[place]?.kind === 'bank') ? [index] : [],
  );
}

/** Legs whose flow cools a part on fins of which something is asked. */
function cooledLegs(enclosure: Enclosure): readonly number[] {
  return enclosure.parts.flatMap((part) => {
    const { seat } = part;
    if (!isAsked(part) || seat.kind !== 'fins') return [];
    return [enclosure.legs.findIndex((leg) => leg.through.includes(seat.place))];
  });
}

/** Legs with fins under any part: their heat comes back into the chamber if they are blown backwards. */
function heatedLegs(enclosure: Enclosure): readonly number[] {
  return enclosure.parts.flatMap(({ seat }) =>
    seat.kind === 'fins' ? [enclosure.legs.findIndex((leg) => leg.through.includes(seat.place))] : [],
  );
}

/** Whether a limit depends on the air of a chamber, directly or as the inlet of the leg of its fins. */
function leansOnChamberAir(enclosure: Enclosure): boolean {
  const limitedInChamber = enclosure.parts.some(
    (part) => isAsked(part) && part.seat.kind === 'chamber' && part.seat.chamber !== OUTSIDE,
  );
  const limitedPanel = (enclosure.skins ?? []).some(({ limit }) => limit !== undefined);
  return (
    limitedInChamber ||
    limitedPanel ||
    cooledLegs(enclosure).some((leg) => (enclosure.legs[leg] as Leg).from !== 0)
  );
}

/**
 * Whether in this airway a faster fan, whichever it is, can never warm a part that has a limit (its own heat
 * and recirculation left out). Told from the drawing alone, so it holds for every build of the enclosure.
 *
 * It is so if (1) every leg with fans helps every other one, so that no fan is ever blown backwards, and (2)
 * every leg with fins under a limited part is helped by all fans. Chamber air falls with speed if there is one
 * chamber only and (3) all fans help every leg in which there is heat: with (1) every fan's leg runs forward, so a
 * faster fan raises the total inflow, and with (3) no heat turns round into the chamber. With more
 * chambers, streams of different heat may be divided anew and nothing is claimed; nor where legs rise or fall, since
 * a faster fan then takes away from what the weight of the air gives elsewhere.
 *
 * @param plant the enclosure's plan
 */
export function fasterIsCooler(plant: Plant): boolean {
  const { enclosure, topology } = plant;
  const fans = bankLegs(enclosure);
  const cooled = cooledLegs(enclosure);
  if (isChimney(enclosure.legs)) return false;
  const leans = leansOnChamberAir(enclosure);
  if (leans && topology.chambers > 2) return false;
  const fixed = leans ? heatedLegs(enclosure) : cooled;
  return fans.every((leg) => {
    const effects = effectsOf(topology, leg);
    const helps = (other: number) => effects[other] === 'with' || effects[other] === 'apart';
    return fans.every(helps) && fixed.every(helps);
  });
}
