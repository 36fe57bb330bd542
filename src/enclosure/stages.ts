import type { BankStage } from '../airway/bank-stage.ts';
import type { Stage } from '../airway/series.ts';
import type { Element } from '../elements/element.ts';
import { lostConductance } from '../fan/mixed-bank.ts';
import { closenessIn, wallsOf } from './closeness.ts';
import type { Bank, BankPlace, Build, Enclosure, Leg, Place } from './enclosure.ts';

/** What stands in a place of a build: an element or a bank, `null` if the place is empty. */
export function occupant(place: Place, option: number): Element | Bank | null {
  if (place.kind === 'element') {
    const chosen = place.options[option];
    if (!chosen) throw new RangeError(`${place.id} has no option ${option}`);
    return chosen.element;
  }
  const chosen = place.options[option];
  if (chosen === undefined) throw new RangeError(`${place.id} has no option ${option}`);
  return chosen;
}

/** Fans of a build in one of its places; `null` if the place is empty or takes no fans. */
export function bankIn(enclosure: Enclosure, build: Build, place: number): Bank | null {
  const there = enclosure.places[place];
  if (there?.kind !== 'bank') return null;
  return occupant(there, build[place] ?? -1) as Bank | null;
}

/** Whether a running bank's air passes fins between the bank before it in the leg and itself. */
function finsBetween(
  enclosure: Enclosure,
  build: Build,
  leg: Leg,
  upstream: number,
  position: number,
): boolean {
  return leg.through.slice(upstream + 1, position).some((index) => {
    const place = enclosure.places[index] as Place;
    return place.kind === 'element' && place.options[build[index] ?? 0]?.element.disturbance === 'fins';
  });
}

/**
 * A bank as a stage of its leg, derated if another bank of the build runs before it.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param leg the bank's leg
 * @param position its position in the leg
 * @param bank the fans that stand there
 */
export function bankStage(
  enclosure: Enclosure,
  build: Build,
  leg: Leg,
  position: number,
  bank: Bank,
): BankStage {
  const upstream = leg.through.findLastIndex(
    (index, at) => at < position && bankIn(enclosure, build, index) !== null,
  );
  const { fan, count, lost } = bank;
  const { deratingAcrossFins, deratingDirect } = enclosure.assumptions.fan;
  const across = upstream >= 0 && finsBetween(enclosure, build, leg, upstream, position);
  const behind = across ? deratingAcrossFins : deratingDirect;
  const place = enclosure.places[leg.through[position] as number] as BankPlace;
  const walls = wallsOf(enclosure, place, bank);
  return {
    kind: 'bank',
    curve: fan.curve,
    count,
    derating: upstream < 0 ? 1 : behind,
    ...(lost ? { conductance: lostConductance(fan.curve, fan.size, lost, enclosure.assumptions.fan) } : {}),
    ...(walls === undefined ? {} : { walls }),
  };
}

/** The stages of a leg for one build, in stream order. */
export function stagesOf(enclosure: Enclosure, build: Build, leg: Leg): readonly Stage[] {
  const closeness = closenessIn(enclosure, build, leg);
  return leg.through.map((index, position): Stage => {
    const place = enclosure.places[index] as Place;
    if (place.kind === 'bank') {
      const bank = bankIn(enclosure, build, index);
      return bank ? bankStage(enclosure, build, leg, position, bank) : { kind: 'empty' };
    }
    const element = occupant(place, build[index] ?? -1) as Element;
    const close = closeness[position];
    return close ? { kind: 'element', element, used: close.used } : { kind: 'element', element };
  });
}
