import type { Metres } from '../quantities/dimensions.ts';
import { installationTerm, type Obstacle } from '../sound/fan-noise.ts';
import type { Bank, BankPlace, Build, Enclosure, Leg, Place } from './enclosure.ts';

/** Objects of a face beyond the second are hidden by the first two. */
const OBJECTS_HEARD = 2;

function fansThere(place: Place, build: Build, index: number): boolean {
  return place.kind === 'bank' && (place.options[build[index] ?? 0] ?? null) !== null;
}

/**
 * What stands before a face of a bank, nearest first, looking along its leg until a chamber, another running
 * bank or enough objects. Empty places add their depth to the clear distance.
 */
function objectsAlong(
  enclosure: Enclosure,
  build: Build,
  leg: Leg,
  stage: number,
  step: 1 | -1,
  clear: number,
): Obstacle[] {
  const objects: Obstacle[] = [];
  let gap = clear;
  for (
    let at = stage + step;
    at >= 0 && at < leg.through.length && objects.length < OBJECTS_HEARD;
    at += step
  ) {
    const index = leg.through[at] as number;
    const place = enclosure.places[index] as Place;
    if (fansThere(place, build, index)) {
      objects.push({ disturbance: 'fan', gap });
      return objects;
    }
    if (place.kind === 'bank') {
      gap += place.depth;
      continue;
    }
    const { disturbance } = place.options[build[index] ?? 0]?.element ?? {};
    if (disturbance) objects.push({ disturbance, gap });
  }
  return objects;
}

function withWall(objects: readonly Obstacle[], distance: Metres | undefined): readonly Obstacle[] {
  return distance === undefined ? objects : [...objects, { disturbance: 'wall', gap: distance }];
}

/** What stands before and behind a bank: along its leg nearest first, then its walls. */
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
 */
export function bankSurroundings(
  enclosure: Enclosure,
  build: Build,
  place: BankPlace,
  leg: number,
  stage: number,
): Surroundings {
  const plan = enclosure.legs[leg] as Leg;
  const { inletGap, outletGap, inletWall, outletWall } = place;
  return {
    inlet: withWall(objectsAlong(enclosure, build, plan, stage, -1, inletGap), inletWall),
    outlet: withWall(objectsAlong(enclosure, build, plan, stage, 1, outletGap), outletWall),
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
  const { inlet, outlet } = bankSurroundings(enclosure, build, place, leg, stage);
  return installationTerm(inlet, outlet, bank.fan.size, sound) + sound.panelMounting;
}
