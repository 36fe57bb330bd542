import type { Enclosure } from '../../enclosure/enclosure.ts';
import { plantOf } from '../../enclosure/machine.ts';
import type { FanModel } from '../../fan/fan-model.ts';
import type { Watts } from '../../quantities/dimensions.ts';
import { levelOf } from '../../sound/levels.ts';
import type { NeighbourRises, SoundAssumptions } from '../../sound/sound-assumptions.ts';
import { OBJECTIVES } from '../objective.ts';
import type { OptionForest } from '../option-tree.ts';
import { createPromises, type Promises } from '../promise.ts';

/** Sound energy that stands for a watt [-]: usual powers then are in the range of usual noises. */
const ENERGY_OF_WATT = 1000;
/** Power grows with the cube of the speed: 30 dB a decade. */
const CUBE = 30;
/** As good as no sound [dB]. */
const NO_SOUND = -500;

function without(rises: NeighbourRises): NeighbourRises {
  return Object.fromEntries(Object.keys(rises).map((key) => [key, 0])) as unknown as NeighbourRises;
}

/** Assumptions under which a fan has a level at full speed and the law of its power, and nothing else is heard. */
function silenced(sound: SoundAssumptions): SoundAssumptions {
  const { installation, opening, stall, workingPoint } = sound;
  return {
    ...sound,
    speedExponent: CUBE,
    speedExponentRange: { least: CUBE, most: CUBE },
    fanFloor: NO_SOUND,
    panelMounting: 0,
    workingPoint: workingPoint.map((knot) => ({ ...knot, rise: 0 })),
    stall: { ...stall, rise: 0 },
    installation: { inlet: without(installation.inlet), outlet: without(installation.outlet) },
    opening: { ...opening, constant: NO_SOUND },
    attenuation: 0,
  };
}

/** A fan whose sound energy at full speed stands for its electrical power in air of the density of reference. */
function humming(fan: FanModel): FanModel {
  const level = levelOf(ENERGY_OF_WATT * fan.power);
  return { ...fan, ratings: [{ speed: fan.fullSpeed, level, basisStated: true }] };
}

/**
 * The enclosure with the electrical power of its fans, in air of the density of reference, in place of their noise.
 *
 * @param enclosure the scenario
 */
function withPowerAsNoise(enclosure: Enclosure): Enclosure {
  const places = enclosure.places.map(({ heard: _, ...place }) =>
    place.kind === 'bank'
      ? { ...place, options: place.options.map((bank) => bank && { ...bank, fan: humming(bank.fan) }) }
      : place,
  );
  const { assumptions } = enclosure;
  return {
    ...enclosure,
    places,
    listener: { distance: 1 },
    assumptions: { ...assumptions, sound: silenced(assumptions.sound) },
  };
}

/**
 * Bounds of the electrical power of fans, by the bounds of noise: both only grow with the speeds, and all that is known
 * of what the limits ask is the same.
 *
 * @param enclosure the scenario
 * @param forest groups of the options of its places
 */
export function powerPromises(enclosure: Enclosure, forest: OptionForest): Promises {
  const humming = withPowerAsNoise(enclosure);
  return createPromises(humming, plantOf(humming), OBJECTIVES.mean, forest);
}

/** Mean power over time from the energies of the duties [W], in air of the density of reference. */
export function wattsOf(enclosure: Enclosure, energies: Float64Array): Watts {
  return OBJECTIVES.mean.energyOf(enclosure, energies) / ENERGY_OF_WATT;
}
