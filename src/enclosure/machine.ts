import { type Balancer, createBalancer } from '../airway/balance.ts';
import { type SeriesLeg, seriesLeg } from '../airway/series.ts';
import type { Topology } from '../airway/topology.ts';
import type { Element } from '../elements/element.ts';
import { createMixer, type Mixer } from '../heat/mixing.ts';
import type { SpeedLevel } from '../sound/fan-noise.ts';
import { speedModel } from '../sound/fan-noise.ts';
import type { SpeedBand } from './avoided-speeds.ts';
import type { Bank, BankPlace, Build, Enclosure, Leg, Place } from './enclosure.ts';
import { nearness } from './hearing.ts';
import { bankInstallation } from './installation.ts';
import { bankIn, occupant, stagesOf } from './stages.ts';

/** What all builds of an enclosure share: the plan of its airway and the solvers made for it. */
export interface Plant {
  readonly enclosure: Enclosure;
  readonly topology: Topology;
  readonly balance: Balancer;
  readonly mix: Mixer;
}

/** A bank of a build with all that does not depend on the speeds worked out. */
export interface MachineBank {
  readonly place: number;
  readonly leg: number;
  readonly stage: number;
  readonly bank: Bank;
  readonly speedLevel: SpeedLevel;
  /** Installation and panel terms of one fan [dB]. */
  readonly installation: number;
  /** Factor on its sound energy that makes it count as far off as the box [-]. */
  readonly nearness: number;
  /** Speeds it should not run at. */
  readonly avoid: readonly SpeedBand[];
}

/** An element of a build with its position. */
export interface MachineElement {
  readonly place: number;
  readonly leg: number;
  readonly stage: number;
  readonly element: Element;
  /** Factor on its sound energy that makes it count as far off as the box [-]. */
  readonly nearness: number;
}

/** One build made ready to compute with. */
export interface Machine {
  readonly plant: Plant;
  readonly build: Build;
  readonly legs: readonly SeriesLeg[];
  /** Banks that hold fans, in the order of the places. Speeds are given in this order. */
  readonly banks: readonly MachineBank[];
  /** Openings that make flow noise. */
  readonly vents: readonly MachineElement[];
  /** Leg and stage of the fins each part sits on; null for parts in a chamber. */
  readonly seats: readonly (MachineElement | null)[];
}

/** Conductance from each chamber through its wall to the room [W/K]. */
function conductancesOf({ chambers, skins = [] }: Enclosure): readonly number[] {
  return chambers.map((_, chamber) =>
    skins.reduce((sum, skin) => sum + (skin.chamber === chamber ? skin.conductance : 0), 0),
  );
}

/** Prepares what all builds share. */
export function plantOf(enclosure: Enclosure): Plant {
  const topology = {
    chambers: enclosure.chambers.length,
    from: enclosure.legs.map((leg) => leg.from),
    to: enclosure.legs.map((leg) => leg.to),
  };
  return {
    enclosure,
    topology,
    balance: createBalancer(topology),
    mix: createMixer({
      ...topology,
      recirculation: enclosure.legs.map((leg) => leg.recirculation),
      conductances: conductancesOf(enclosure),
    }),
  };
}

interface Position {
  readonly leg: number;
  readonly stage: number;
}

function positions(enclosure: Enclosure): readonly (Position | null)[] {
  return enclosure.places.map((_, place) => {
    const leg = enclosure.legs.findIndex((candidate) => candidate.through.includes(place));
    return leg < 0 ? null : { leg, stage: (enclosure.legs[leg] as Leg).through.indexOf(place) };
  });
}

/**
 * Makes a build ready to compute with.
 *
 * @param plant what the builds of the enclosure share
 * @param build one option index per place
 * @throws RangeError if an index names no option: a programming error, readers check user input before
 */
export function assemble(plant: Plant, build: Build): Machine {
  const { enclosure } = plant;
  const banks: MachineBank[] = [];
  const elements: (MachineElement | null)[] = [];
  positions(enclosure).forEach((position, index) => {
    const place = enclosure.places[index] as Place;
    elements[index] = null;
    if (!position) return;
    if (place.kind === 'element') {
      elements[index] = {
        place: index,
        ...position,
        element: occupant(place, build[index] ?? -1) as Element,
        nearness: nearness(enclosure, index),
      };
      return;
    }
    const bank = bankIn(enclosure, build, index);
    if (bank) banks.push(machineBank(enclosure, build, index, place, position, bank));
  });
  return {
    plant,
    build,
    legs: enclosure.legs.map((leg) => seriesLeg(stagesOf(enclosure, build, leg))),
    banks,
    vents: elements.filter((entry): entry is MachineElement => entry?.element.ventFace !== undefined),
    seats: enclosure.parts.map((part) =>
      part.seat.kind === 'fins' ? (elements[part.seat.place] ?? null) : null,
    ),
  };
}

function machineBank(
  enclosure: Enclosure,
  build: Build,
  index: number,
  place: BankPlace,
  position: Position,
  bank: Bank,
): MachineBank {
  const { sound } = enclosure.assumptions;
  return {
    place: index,
    ...position,
    bank,
    speedLevel: speedModel(bank.fan.ratings, bank.fan.fullSpeed, sound),
    avoid: place.avoid ?? [],
    installation: bankInstallation(enclosure, build, place, position.leg, position.stage, bank),
    nearness: nearness(enclosure, index),
  };
}
