import type { Fraction } from '../quantities/dimensions.ts';
import { energy } from '../sound/levels.ts';
import { openingSpectrum } from '../sound/opening-spectrum.ts';
import { hasOctaves, ratedSpectrum } from '../sound/rated-spectrum.ts';
import type { Band } from '../sound/spectrum.ts';
import type { MachineBank, MachineElement } from './machine.ts';
import { levelOfEnergy, newNoiseState, soundEnergy, ventFlow } from './noise.ts';
import type { SolvedPass } from './solved-pass.ts';

/** Solid angles into which the sound spreads on which the energies at 1 m rest: fans all round, vents into a half [sr]. */
const SPHERE = 4 * Math.PI;
const HALF_SPHERE = 2 * Math.PI;

/** A bank or an opening as it is heard. */
export interface SoundSource {
  readonly place: number;
  readonly kind: 'fans' | 'opening';
  /** A-weighted energy at the listener, free field [-]. */
  readonly energy: number;
  /** A-weighted sound power over 1 pW [-]. */
  readonly power: number;
  /** Unweighted octaves at the listener from 63 Hz to 8 kHz; silent if the energy is 0. */
  readonly octaves: readonly Band[];
  /** Whether the octaves are those the fan was rated with, brought to the level. */
  readonly octavesGiven: boolean;
}

/** What all sources share. */
interface Field {
  readonly distanceSquared: number;
  /** Energy that the way out lets through [-]. */
  readonly passed: Fraction;
}

function bankSource(
  bank: MachineBank,
  ratio: Fraction,
  moved: number,
  { distanceSquared, passed }: Field,
): SoundSource {
  const { fan } = bank.bank;
  const heard = moved / distanceSquared;
  return {
    place: bank.place,
    kind: 'fans',
    energy: heard,
    power: (moved / bank.nearness) * passed * SPHERE,
    octaves: heard > 0 ? ratedSpectrum(fan.ratings, ratio * fan.fullSpeed, levelOfEnergy(heard)) : [],
    octavesGiven: hasOctaves(fan.ratings),
  };
}

function ventSource(
  { machine, state }: SolvedPass,
  vent: MachineElement,
  moved: number,
  { distanceSquared, passed }: Field,
): SoundSource {
  const heard = moved / distanceSquared;
  const velocity = Math.abs(ventFlow(machine, vent, state)) / (vent.element.ventFace ?? Number.NaN);
  return {
    place: vent.place,
    kind: 'opening',
    energy: heard,
    power: (moved / vent.nearness) * passed * HALF_SPHERE,
    octaves: heard > 0 ? openingSpectrum(levelOfEnergy(heard), velocity) : [],
    octavesGiven: false,
  };
}

/**
 * All sources of a build, banks first, then openings.
 *
 * @param solved a pass that has settled
 */
export function soundSources(solved: SolvedPass): readonly SoundSource[] {
  const { machine, ratios, state } = solved;
  const { listener, assumptions } = machine.plant.enclosure;
  const noise = newNoiseState(machine);
  soundEnergy(machine, ratios, state, noise);
  const field = {
    distanceSquared: listener.distance ** 2,
    passed: energy(-assumptions.sound.attenuation),
  };
  return [
    ...machine.banks.map((bank, index) =>
      bankSource(bank, ratios[index] as number, noise.banks[index] as number, field),
    ),
    ...machine.vents.map((vent, index) => ventSource(solved, vent, noise.vents[index] as number, field)),
  ];
}
