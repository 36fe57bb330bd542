import type { FanModel } from '../fan/fan-model.ts';
import type { Metres } from '../quantities/dimensions.ts';
import { installationTerm, type Obstacle } from '../sound/fan-noise.ts';
import type { Neighbour } from '../sound/sound-assumptions.ts';
import type { Bank, BankPlace, Build, Enclosure, Leg, Place } from './enclosure.ts';

/** Objects of a face beyond the second are hidden by the first two. */
const OBJECTS_HEARD = 2;

/** Fans of which one does not say how it turns are taken to turn the same way. */
function fanAhead(own: FanModel, other: FanModel): Neighbour {
  const opposite = own.turns !== undefined && other.turns !== undefined && own.turns !== other.turns;
  return opposite ? 'counter-fan' : 'fan';
}

/** From where to look along a leg. */
interface View {
  readonly leg: Leg;
  readonly stage: number;
  readonly step: 1 | -1;
  /** Clear distance to what comes next [m]. */
  readonly clear: Metres;
}

/**
 * What stands before a face of a bank, nearest first, looking along its leg until a chamber, another running
 * bank or enough objects. Empty places add their depth to the clear distance.
 */
function objectsAlong(enclosure: Enclosure, build: Build, { fan }: Bank, view: View): Obstacle[] {
  const { leg, stage, step, clear } = view;
  const objects: Obstacle[] = [];
  let gap = clear;
  for (
    let at = stage + step;
    at >= 0 && at < leg.through.length && objects.length < OBJECTS_HEARD;
    at += step
  ) {
    const index = leg.through[at] as number;
    const place = enclosure.places[index] as Place;
    if (place.kind === 'bank') {
      const other = place.options[build[index] ?? 0] ?? null;
      if (other !== null) return [...objects, { disturbance: fanAhead(fan, other.fan), gap }];
      gap += place.depth;
      continue;
    }
    const { disturbance } = place.options[build[index] ?? 0]?.element ?? {};
    if (disturbance) objects.push({ disturbance, gap });
  }
  return objects;
}

/** A bar or a wall that stands there without being a place of the leg. */
function besides(disturbance: Neighbour, gap: Metres | undefined): readonly Obstacle[] {
  return gap === undefined ? [] : [{ disturbance, gap }];
}

/** What stands before and behind a bank: along its leg nearest first, then its bars and walls. */
export interface Surroundings {
  readonly inlet: readonly Obstacle[];
  readonly outlet: readonly Obstacle[];
}

/**
 * What stands before and behind a bank.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param place the bank's place
 * @param leg index of its leg
 * @param stage its position in the leg
 * @param bank the fans that stand there
 */
export function bankSurroundings(
  enclosure: Enclosure,
  build: Build,
  place: BankPlace,
  leg: number,
  stage: number,
  bank: Bank,
): Surroundings {
  const plan = { leg: enclosure.legs[leg] as Leg, stage };
  const before = { ...plan, step: -1, clear: place.inletGap } as const;
  const behind = { ...plan, step: 1, clear: place.outletGap } as const;
  return {
    inlet: [
      ...objectsAlong(enclosure, build, bank, before),
      ...besides('bar', place.inletBar),
      ...besides('wall', place.inletWall),
    ],
    outlet: [
      ...objectsAlong(enclosure, build, bank, behind),
      ...besides('bar', place.outletBar),
      ...besides('wall', place.outletWall),
    ],
  };
}

/**
 * Installation and panel terms of one fan of a bank [dB], from what stands before and behind it.
 *
 * Source: installation table of the sound assumptions (model assumption, no source).
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param place the bank's place
 * @param leg index of its leg
 * @param stage its position in the leg
 * @param bank the fans that stand there
 */
export function bankInstallation(
  enclosure: Enclosure,
  build: Build,
  place: BankPlace,
  leg: number,
  stage: number,
  bank: Bank,
): number {
  const { sound } = enclosure.assumptions;
  const { inlet, outlet } = bankSurroundings(enclosure, build, place, leg, stage, bank);
  return installationTerm(inlet, outlet, bank.fan.size, sound) + sound.panelMounting;
}
