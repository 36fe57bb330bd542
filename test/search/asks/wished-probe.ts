import type { SeriesLeg } from '../../../src/airway/series.ts';
import { fanFlow } from '../../../src/airway/stage-flow.ts';
import type { Duty } from '../../../src/enclosure/enclosure.ts';
import type { Machine } from '../../../src/enclosure/machine.ts';
import { createPass } from '../../../src/enclosure/pass.ts';
import { conditionsOf, newPassState } from '../../../src/enclosure/pass-state.ts';
import { levelOf } from '../../../src/sound/levels.ts';
import { type Probe, probeOf, type Sample } from '../probe.ts';

const ACCURACY = 1e-6;

/** Working points at speeds: how far the worst fan is from stalling, and how much air runs backwards, as shares. */
export interface WorkingPoints {
  /** Flow of a fan less that at the peak of its curve, or 1 %, over free delivery at its speed [-]; the least of all. */
  readonly clearOfStall: number;
  /** Least flow through a bank over its free delivery at full speed [-]. */
  readonly leastFlow: number;
  /** Electrical power of all fans [W]. */
  readonly power: number;
}

/** Passes that tell the working points at log speeds; null without a solution. */
export function workingPoints(machine: Machine, duty: Duty): (speeds: Float64Array) => WorkingPoints | null {
  const conditions = conditionsOf(machine.plant.enclosure, duty);
  const pass = createPass(machine);
  const state = newPassState(machine);
  return (speeds) => {
    const ratios = speeds.map((speed) => Math.exp(speed));
    if (pass(conditions, ratios, state, ACCURACY)) return null;
    let clearOfStall = Number.POSITIVE_INFINITY;
    let leastFlow = Number.POSITIVE_INFINITY;
    let power = 0;
    machine.banks.forEach(({ bank, leg, stage }, index) => {
      const law = machine.legs[leg] as SeriesLeg;
      const massFlow = state.network.flows[leg] as number;
      const ratio = ratios[index] as number;
      const perFan = fanFlow(law, stage, massFlow);
      const { curve } = bank.fan;
      clearOfStall = Math.min(
        clearOfStall,
        perFan / ratio / curve.freeDelivery - Math.max(0.01, curve.peakFlow / curve.freeDelivery),
      );
      const volume = massFlow / (law.densities[stage] as number);
      leastFlow = Math.min(leastFlow, volume / (bank.count * curve.freeDelivery));
      power += bank.count * bank.fan.power * ratio ** 3 * ((law.densities[stage] as number) / 1.2);
    });
    return { clearOfStall, leastFlow, power };
  };
}

/** A probe for which speeds that stall a fan, or at which air runs backwards through one, do not hold. */
export function pointProbe(machine: Machine, duty: Duty): Probe {
  const probe = probeOf(machine, duty);
  const look = workingPoints(machine, duty);
  const at = (speeds: Float64Array): Sample => {
    const sample = probe.at(speeds);
    const points = look(speeds);
    const good = points !== null && points.clearOfStall >= 1e-4 && points.leastFlow >= 0.01;
    return good ? sample : { ...sample, worst: Math.max(sample.worst, 1) };
  };
  return { ...probe, at };
}

/** A probe of the one speed that all banks share. */
export function sharedProbe(machine: Machine, duty: Duty): Probe {
  const probe = probeOf(machine, duty);
  const all = (speeds: Float64Array): Float64Array => probe.floors.map(() => speeds[0] as number);
  return {
    ...probe,
    floors: Float64Array.of(Math.max(...probe.floors)),
    at: (speeds) => ({ ...probe.at(all(speeds)), speeds: Float64Array.from(speeds) }),
    quietest: (speeds) => probe.quietest(all(speeds)),
  };
}

/** A probe whose energy is the electrical power, and for which what is louder than a cap does not hold. */
export function powerProbe(machine: Machine, duty: Duty, cap: number): Probe {
  const probe = probeOf(machine, duty);
  const look = workingPoints(machine, duty);
  return {
    ...probe,
    at: (speeds) => {
      const sample = probe.at(speeds);
      const power = look(speeds)?.power ?? Number.POSITIVE_INFINITY;
      return { ...sample, energy: power, worst: Math.max(sample.worst, levelOf(sample.energy) - cap) };
    },
    // Air at the fans is never less than half as dense as that of reference.
    quietest: (speeds) =>
      machine.banks.reduce(
        (sum, { bank }, index) =>
          sum + 0.5 * bank.count * bank.fan.power * Math.exp(3 * (speeds[index] as number)),
        0,
      ),
  };
}
