import { elementLoss, type SeriesLeg } from '../airway/series.ts';
import { fanFlow } from '../airway/stage-flow.ts';
import type { CubicMetresPerSecond, Decibels } from '../quantities/dimensions.ts';
import { levelAtRatio, workingPointTerm } from '../sound/fan-noise.ts';
import { energy } from '../sound/levels.ts';
import { openingEnergy } from '../sound/opening-noise.ts';
import { stallTerm } from '../sound/stall.ts';
import type { Machine, MachineBank, MachineElement } from './machine.ts';
import type { PassState } from './pass-state.ts';

/**
 * Sound energies at 1 m, relative to the reference pressure squared: 10^(L/10). Each source is moved to the distance
 * of the box and carries its directivity, so that all may be added and spread together.
 */
export interface NoiseState {
  /** One entry a bank, all its fans together. */
  readonly banks: Float64Array;
  /** One entry an opening. */
  readonly vents: Float64Array;
}

/** Room for the energies of a build's sources. */
export function newNoiseState(machine: Machine): NoiseState {
  return { banks: new Float64Array(machine.banks.length), vents: new Float64Array(machine.vents.length) };
}

/** Flow of one turning fan of a bank as a share of its free delivery at its speed [-]; 0 if it stands still. */
export function flowShare(machine: Machine, bank: MachineBank, ratio: number, state: PassState): number {
  if (ratio <= 0) return 0;
  const leg = machine.legs[bank.leg] as SeriesLeg;
  const volume = fanFlow(leg, bank.stage, state.network.flows[bank.leg] as number);
  return volume / (ratio * bank.bank.fan.curve.freeDelivery);
}

function bankEnergy(machine: Machine, bank: MachineBank, ratio: number, state: PassState): number {
  if (ratio <= 0) return 0;
  const { sound } = machine.plant.enclosure.assumptions;
  const share = flowShare(machine, bank, ratio, state);
  const { curve } = bank.bank.fan;
  const working = Math.max(
    workingPointTerm(share, sound),
    stallTerm(share, curve.peakFlow / curve.freeDelivery, sound),
  );
  const level = levelAtRatio(bank.speedLevel, ratio) + working + bank.installation;
  // The floor of each fan is added last and at every speed, so the energy has no kink.
  return bank.nearness * bank.bank.count * (energy(level) + energy(sound.fanFloor));
}

/**
 * Sound energy at the listener that the fans of a build make at least at given speeds [-]: every fan working where
 * it is quietest, the openings silent.
 *
 * @param machine the build
 * @param ratios speed of each bank as a share of full speed [-]
 */
export function quietestEnergy(machine: Machine, ratios: Float64Array): number {
  const { assumptions, listener } = machine.plant.enclosure;
  let sum = 0;
  for (const [index, { speedLevel, installation, nearness, bank }] of machine.banks.entries()) {
    const level = levelAtRatio(speedLevel, ratios[index] as number) + installation;
    sum += nearness * bank.count * (energy(level) + energy(assumptions.sound.fanFloor));
  }
  return sum / listener.distance ** 2;
}

/** Volume flow through an opening, at its own density [m³/s]. */
export function ventFlow(
  machine: Machine,
  { leg, stage }: MachineElement,
  state: PassState,
): CubicMetresPerSecond {
  const { densities } = machine.legs[leg] as SeriesLeg;
  return (state.network.flows[leg] as number) / (densities[stage] as number);
}

function ventEnergy(machine: Machine, vent: MachineElement, state: PassState): number {
  const leg = machine.legs[vent.leg] as SeriesLeg;
  const density = leg.densities[vent.stage] as number;
  const flow = ventFlow(machine, vent, state);
  const face = vent.element.ventFace ?? 0;
  if (!(face > 0)) return 0;
  const loss = elementLoss(vent.element, flow, density, leg.viscosities[vent.stage] as number);
  return vent.nearness * openingEnergy(face, flow, loss, density, machine.plant.enclosure.assumptions.sound);
}

/**
 * Sound energy of a build at the listener, free field: the sum over all fans and openings, each by its distance.
 *
 * @param machine the build
 * @param ratios speed of each bank as a share of full speed [-]
 * @param state a solved pass at these speeds
 * @param noise overwritten by the energy of each source at 1 m, as if as far off as the box
 * @returns 10^(L/10) at the listener [-]
 */
export function soundEnergy(
  machine: Machine,
  ratios: Float64Array,
  state: PassState,
  noise: NoiseState,
): number {
  let sum = 0;
  for (let index = 0; index < machine.banks.length; index++) {
    const bank = machine.banks[index] as MachineBank;
    const energy = bankEnergy(machine, bank, ratios[index] as number, state);
    noise.banks[index] = energy;
    sum += energy;
  }
  for (let index = 0; index < machine.vents.length; index++) {
    const energy = ventEnergy(machine, machine.vents[index] as MachineElement, state);
    noise.vents[index] = energy;
    sum += energy;
  }
  return sum / machine.plant.enclosure.listener.distance ** 2;
}

/** Level of a sound energy [dB]; silence is −∞. */
export function levelOfEnergy(energy: number): Decibels {
  return 10 * Math.log10(energy);
}
