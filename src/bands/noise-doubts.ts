import type { Machine, MachineBank } from '../enclosure/machine.ts';
import { flowShare } from '../enclosure/noise.ts';
import type { SolvedPass } from '../enclosure/solved-pass.ts';
import type { Uncertainties } from '../enclosure/uncertainties.ts';
import { energy } from '../sound/levels.ts';
import type { SoundAssumptions } from '../sound/sound-assumptions.ts';
import { speedUncertainty, workingPointUncertainty } from '../sound/source-uncertainty.ts';
import { commonParts } from './common-parts.ts';
import { HALF_WIDTH } from './doubt.ts';
import type { DutyReading } from './duty-reading.ts';

/** Something that may be off about noise alone, by source [dB], at the end of its 90 % band. */
export interface NoiseDoubt {
  readonly key: string;
  /** The fans of each bank, without their floor. */
  readonly fans: readonly number[];
  /** The floor of each bank. */
  readonly floors: readonly number[];
  readonly vents: readonly number[];
}

/**
 * Standard uncertainty of the rating of a bank's fans [dB]; of a fan with several ratings the least sure counts.
 */
function ratingUncertainty({ bank }: MachineBank, sound: SoundAssumptions, sizes: Uncertainties): number {
  const { id, ratings } = bank.fan;
  const stated = Object.hasOwn(sizes.rating.of, id) ? sizes.rating.of[id] : sizes.rating.usual;
  if (stated !== undefined) return stated / HALF_WIDTH;
  const { ratingStated, ratingUnstated, basisUnstated } = sound.uncertainty;
  return ratings.every(({ basisStated }) => basisStated)
    ? ratingStated
    : Math.hypot(ratingUnstated, basisUnstated);
}

/** Standard uncertainty of the level of one fan of a bank at work, without its floor [dB]. */
function fanUncertainty(solved: SolvedPass, index: number, sizes: Uncertainties): number {
  const { machine, ratios, state } = solved;
  const { sound } = machine.plant.enclosure.assumptions;
  const bank = machine.banks[index] as MachineBank;
  const ratio = ratios[index] as number;
  const { curve } = bank.bank.fan;
  const share = flowShare(machine, bank, ratio, state);
  const stalled = share < curve.peakFlow / curve.freeDelivery;
  const installation = Math.max(0, bank.installation - sound.panelMounting);
  const { installationLeast, installationShare } = sound.uncertainty;
  return Math.hypot(
    ratingUncertainty(bank, sound, sizes),
    speedUncertainty(bank.speedLevel, ratio),
    workingPointUncertainty(share, stalled, sound),
    installation > 0 ? Math.max(installationLeast, installationShare * installation) : 0,
  );
}

/** The same for the flow noise of openings: the law they share, and what is left to each. */
function ventDoubts({ vents, banks, plant }: Machine): readonly NoiseDoubt[] {
  const { uncertainty, correlation } = plant.enclosure.assumptions.sound;
  const shared = Math.min(1, Math.max(0, correlation.sameModel));
  const size = HALF_WIDTH * uncertainty.opening;
  const none = banks.map(() => 0);
  return [
    { key: 'openings', fans: none, floors: none, vents: vents.map(() => size * Math.sqrt(shared)) },
    ...vents.map((own) => ({
      key: `opening ${plant.enclosure.places[own.place]?.id ?? ''}`,
      fans: none,
      floors: none,
      vents: vents.map((vent) => (vent === own ? size * Math.sqrt(1 - shared) : 0)),
    })),
  ];
}

/**
 * What may be off about the noise of a build at work: the fans' levels (rating, speed, working point and installation
 * together), their floors, the flow noise of openings, and what all builds have in common.
 *
 * Source: parts of one fan by root of squares (JCGM 100, 5.1.2); what fans have in common by the assumed correlations.
 *
 * @param solved the build at work
 * @param sizes how far off ratings may be, as far as said by fan
 */
export function noiseDoubts(solved: SolvedPass, sizes: Uncertainties): readonly NoiseDoubt[] {
  const { machine } = solved;
  const { banks, vents } = machine;
  const { uncertainty } = machine.plant.enclosure.assumptions.sound;
  const own = banks.map((_, index) => HALF_WIDTH * fanUncertainty(solved, index, sizes));
  const none = banks.map(() => 0);
  const silent = vents.map(() => 0);
  const mounting = HALF_WIDTH * uncertainty.panelMounting;
  const wayOut = HALF_WIDTH * uncertainty.attenuation;
  return [
    ...commonParts(machine, 'noise').map(({ key, weights }) => ({
      key,
      fans: own.map((size, index) => size * (weights[index] as number)),
      floors: none,
      vents: silent,
    })),
    {
      key: 'floor of all fans',
      fans: none,
      floors: banks.map(() => HALF_WIDTH * uncertainty.floor),
      vents: silent,
    },
    ...ventDoubts(machine),
    { key: 'mounting in panels', fans: banks.map(() => mounting), floors: none, vents: silent },
    {
      key: 'way out of the box',
      fans: banks.map(() => wayOut),
      floors: banks.map(() => wayOut),
      vents: vents.map(() => wayOut),
    },
  ];
}

/** Sound energy at the listener of the floors of each bank [-]. */
export function floorEnergies({ banks, plant }: Machine): readonly number[] {
  const { assumptions, listener } = plant.enclosure;
  return banks.map(
    ({ nearness, bank }) =>
      (nearness * bank.count * energy(assumptions.sound.fanFloor)) / listener.distance ** 2,
  );
}

/**
 * Sound energy of a build at the listener if something about its noise is off [-].
 *
 * @param reading of the build at work
 * @param floors energies of the floors, part of those of the banks [-]
 * @param doubt what is off
 * @param amount how far, in half-widths of the 90 % band [-]
 */
export function movedEnergy(
  { banks, vents }: DutyReading,
  floors: readonly number[],
  doubt: NoiseDoubt,
  amount: number,
): number {
  let sum = 0;
  banks.forEach((whole, index) => {
    const floor = whole > 0 ? (floors[index] as number) : 0;
    sum += (whole - floor) * energy(amount * (doubt.fans[index] as number));
    sum += floor * energy(amount * (doubt.floors[index] as number));
  });
  vents.forEach((value, index) => {
    sum += value * energy(amount * (doubt.vents[index] as number));
  });
  return sum;
}
