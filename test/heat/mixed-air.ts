import { expect } from 'vitest';
import { createMixer, type MixingTopology } from '../../src/heat/mixing.ts';

/** Specific heat of dry air [J/(kg·K)]. Common value (any heat-transfer text). */
export const CP = 1006;
/** 25 °C [K]. */
export const ROOM = 298.15;

/** An airway with its flows and heat. */
export interface Case {
  readonly chambers: number;
  /** From, to, mass flow [kg/s], heat in the leg [W], recirculation. */
  readonly legs: readonly (readonly [number, number, number, number?, number?])[];
  /** Heat in each chamber [W], outside first. */
  readonly heat?: readonly number[];
  readonly room?: number;
}

/** Temperatures of all chambers and of the exhaust [K]. */
export function mix({ chambers, legs, heat = [], room = ROOM }: Case): Float64Array {
  const topology: MixingTopology = {
    chambers,
    from: legs.map(([from]) => from),
    to: legs.map(([, to]) => to),
    recirculation: legs.map(([, , , , share]) => share ?? 0),
  };
  const temperatures = new Float64Array(chambers + 1);
  const solved = createMixer(topology)(
    Float64Array.from(legs, ([, , flow]) => flow),
    Float64Array.from(legs, ([, , , watts]) => watts ?? 0),
    Float64Array.from({ length: chambers }, (_, chamber) => heat[chamber] ?? 0),
    room,
    CP,
    temperatures,
  );
  expect(solved).toBe(true);
  return temperatures;
}

/** Rise of each chamber above the room [K], outside first; the exhaust last. */
export function rises(plan: Case): readonly number[] {
  return Array.from(mix(plan), (temperature) => temperature - (plan.room ?? ROOM));
}
