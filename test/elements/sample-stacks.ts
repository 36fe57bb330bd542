import { type FinState, finState } from '../../src/elements/fin-heat.ts';
import { finHeat, fins, type Low, type Tower } from '../../src/elements/fins.ts';
import { AIR_AT_25, lossOf } from './loss-of.ts';

/** Invented tower: 60 fins of 0.4 mm every 2 mm on a face of 120 x 120 mm, pipe rows 20 mm apart. */
export function tower(depth: number, pitch = 0.002): Tower {
  const face = { width: 0.12, height: 0.12 };
  return { fins: 'tower', face, depth, pitch, fin: 0.0004, conductivity: 200, pipes: 0.01 };
}

/** Invented low stack: 27 fins of 0.8 mm, 80 mm across, 20 mm high, 100 mm long. */
export const low: Low = {
  fins: 'low',
  face: { width: 0.08, height: 0.02 },
  depth: 0.1,
  count: 27,
  fin: 0.0008,
  conductivity: 200,
};

/** Flow at a velocity before the face [m³/s]. */
export function flowInto(stack: Tower | Low, velocity: number): number {
  return velocity * stack.face.width * stack.face.height;
}

/** Heat side at a velocity before the face [m/s], air entering at 25 °C. */
export function heatAt(stack: Tower | Low, velocity: number): FinState {
  return finState(finHeat(stack), flowInto(stack, velocity), AIR_AT_25);
}

/** Loss at a velocity before the face [m/s], air of 25 °C [Pa]. */
export function lossAt(stack: Tower | Low, velocity: number): number {
  return lossOf(fins.make(asWritten(stack)), flowInto(stack, velocity), AIR_AT_25);
}

/** The same stack as a file would say it. */
export function asWritten(stack: Tower | Low): Record<string, unknown> {
  const { face, ...rest } = stack;
  const lengths = ['depth', 'pitch', 'fin', 'pipes'];
  const fields = Object.entries(rest).map(([key, value]) => [
    key,
    lengths.includes(key) ? `${value} m` : value,
  ]);
  return {
    ...Object.fromEntries(fields),
    face: `${face.width} x ${face.height} m`,
    conductivity: `${stack.conductivity} W/(m K)`,
  };
}
