import type { Air } from '../air/air.ts';
import { airAt } from '../air/air.ts';
import { type SeriesLeg, type Stage, seriesLeg } from '../airway/series.ts';
import type { Element, FlowLaw } from '../elements/element.ts';
import type { Enclosure, Place } from '../enclosure/enclosure.ts';
import type { Machine, MachineElement } from '../enclosure/machine.ts';
import type { SolvedPass } from '../enclosure/solved-pass.ts';
import { bankIn } from '../enclosure/stages.ts';
import type { Uncertainties } from '../enclosure/uncertainties.ts';
import { type Doubt, factorOf } from './doubt.ts';

/** An element of a build with its position. */
interface Standing {
  readonly place: number;
  readonly leg: number;
  readonly stage: number;
  readonly element: Element;
}

/** The passive elements of a build. */
function standing({ legs }: Machine, enclosure: Enclosure): readonly Standing[] {
  return enclosure.legs.flatMap(({ through }, leg) =>
    through.flatMap((place, stage): Standing[] => {
      const there = legs[leg]?.stages[stage];
      return there?.kind === 'element' ? [{ place, leg, stage, element: there.element }] : [];
    }),
  );
}

function scaledLaw(law: FlowLaw, factor: number): FlowLaw {
  return {
    loss: (flow, density, viscosity) => factor * law.loss(flow, density, viscosity),
    slope: (flow, density, viscosity) => factor * law.slope(flow, density, viscosity),
  };
}

function withLoss(element: Element, factor: number): Element {
  return {
    ...element,
    viscous: element.viscous * factor,
    inertial: element.inertial * factor,
    faint: element.faint * factor,
    ...(element.law ? { law: scaledLaw(element.law, factor) } : {}),
  };
}

/** Whatever the fins are, air never leaves warmer than they. */
function withResistance(element: Element, factor: number): Element {
  const law = element.finResistance;
  if (!law) return element;
  const finResistance = (flow: number, inlet: Air): number =>
    Math.max(factor * law(flow, inlet), 1 / (inlet.density * Math.abs(flow) * inlet.specificHeat));
  return { ...element, finResistance };
}

/** The machine with another element in a place. */
function replaced(
  machine: Machine,
  { leg, stage, place }: Standing,
  change: (element: Element) => Element,
): Machine {
  const stages = (machine.legs[leg] as SeriesLeg).stages.map(
    (there, at): Stage =>
      at === stage && there.kind === 'element' ? { ...there, element: change(there.element) } : there,
  );
  const swap = <Entry extends MachineElement | null>(entry: Entry): Entry =>
    entry?.place === place ? { ...entry, element: change(entry.element) } : entry;
  return {
    ...machine,
    legs: machine.legs.with(leg, seriesLeg(stages)),
    vents: machine.vents.map(swap),
    seats: machine.seats.map(swap),
  };
}

function lossDoubt(enclosure: Enclosure, where: Standing, sizes: Uncertainties): readonly Doubt[] {
  const { id } = enclosure.places[where.place] as Place;
  const { lossUncertainty, disturbance = 'none' } = where.element;
  // What loses nothing cannot be off by a share.
  if (lossUncertainty === 0) return [];
  const share = Object.hasOwn(sizes.loss.of, id)
    ? (sizes.loss.of[id] as number)
    : (sizes.loss.usual ?? lossUncertainty);
  return [
    {
      // Options of one place that are as uncertain and disturb fans alike are taken for one kind, off by the same.
      key: `loss of ${id}, ${disturbance}, ${lossUncertainty}`,
      moved: ({ machine, duty }, amount) => ({
        machine: replaced(machine, where, (element) => withLoss(element, factorOf(share, amount))),
        duty,
      }),
    },
  ];
}

/** Whether a bank of the build stands right before an element, where its stream comes from. */
function behindFan(enclosure: Enclosure, { build }: Machine, { leg, stage }: Standing): boolean {
  const through = enclosure.legs[leg]?.through ?? [];
  for (let at = stage - 1; at >= 0; at--) {
    const place = through[at] as number;
    if (enclosure.places[place]?.kind === 'element') return false;
    if (bankIn(enclosure, build, place) !== null) return true;
  }
  return false;
}

function finDoubt(solved: SolvedPass, where: Standing, sizes: Uncertainties): readonly Doubt[] {
  const { machine, state, conditions } = solved;
  const { enclosure } = machine.plant;
  if (!where.element.finResistance) return [];
  const { id } = enclosure.places[where.place] as Place;
  const usual = behindFan(enclosure, machine, where) ? sizes.finsBehindFan : sizes.fins.usual;
  const inlet = airAt(
    conditions.site,
    Math.min(500, state.stages[where.leg]?.[where.stage] ?? conditions.room),
  );
  const flow = (state.network.flows[where.leg] as number) / inlet.density;
  const further = where.element.finUncertainty?.(flow, inlet) ?? 0;
  const share = Object.hasOwn(sizes.fins.of, id) ? (sizes.fins.of[id] as number) : Math.hypot(usual, further);
  return [
    {
      key: `fins of ${id}`,
      moved: ({ machine: moving, duty }, amount) => ({
        machine: replaced(moving, where, (element) => withResistance(element, factorOf(share, amount))),
        duty,
      }),
    },
  ];
}

/**
 * What may be off about the elements that air passes: their losses, and the resistances of fins and sinks.
 *
 * @param solved the build at work
 * @param sizes how far off each may be
 */
export function airDoubts(solved: SolvedPass, sizes: Uncertainties): readonly Doubt[] {
  const { enclosure } = solved.machine.plant;
  return standing(solved.machine, enclosure).flatMap((where) => [
    ...lossDoubt(enclosure, where, sizes),
    ...finDoubt(solved, where, sizes),
  ]);
}
