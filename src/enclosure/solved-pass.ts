import { runsAlong } from '../heat/stagnant-air.ts';
import type { Kelvins } from '../quantities/dimensions.ts';
import type { Duty, Leg } from './enclosure.ts';
import { enteringAir } from './entering-air.ts';
import type { Machine } from './machine.ts';
import type { Conditions, PassState } from './pass-state.ts';

/** A pass that has settled, with all that led to it. */
export interface SolvedPass {
  readonly machine: Machine;
  readonly duty: Duty;
  readonly conditions: Conditions;
  readonly ratios: Float64Array;
  readonly state: PassState;
}

/** Name of a place of the scenario. */
export function placeId(machine: Machine, place: number): string {
  return machine.plant.enclosure.places[place]?.id ?? '';
}

/** Temperature of a chamber [K]. */
export function chamberTemperature({ state }: SolvedPass, index: number): number {
  return state.chambers[index] as number;
}

/** Whether the air of a leg runs along it. */
export function isForward({ state }: SolvedPass, leg: number): boolean {
  return runsAlong(state.network.flows[leg] as number);
}

/** Air at the end of a leg where its stream enters [K]. */
export function enteringTemperature(solved: SolvedPass, leg: Leg, index: number): Kelvins {
  return enteringAir(leg, isForward(solved, index), solved.state);
}
