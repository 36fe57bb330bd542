import type { Duty, Leg } from './enclosure.ts';
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

/** Air that enters a forward leg: that of its chamber, or room air mixed with the exhaust it draws in again [K]. */
export function enteringTemperature(solved: SolvedPass, leg: Leg, index: number): number {
  return solved.state.stages[index]?.[0] ?? chamberTemperature(solved, leg.from);
}
