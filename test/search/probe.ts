import type { Duty } from '../../src/enclosure/enclosure.ts';
import type { Machine } from '../../src/enclosure/machine.ts';
import { newNoiseState, soundEnergy } from '../../src/enclosure/noise.ts';
import { createPass } from '../../src/enclosure/pass.ts';
import { type Conditions, conditionsOf, coolDown, newPassState } from '../../src/enclosure/pass-state.ts';
import { levelAtRatio } from '../../src/sound/fan-noise.ts';
import { energy } from '../../src/sound/levels.ts';

/** A build in one duty at one set of speeds. */
export interface Sample {
  /** Logarithms of the speeds as shares of full speed. */
  readonly speeds: Float64Array;
  /** Sound energy at the listener [-]. */
  readonly energy: number;
  /** Largest excess over a limit [K]; −∞ without limits, ∞ without a solution, or if a part runs away or spoils. */
  readonly worst: number;
}

/** A build in one duty, to be looked at anywhere. */
export interface Probe {
  /** Logarithms of the hold floors. */
  readonly floors: Float64Array;
  readonly at: (speeds: Float64Array) => Sample;
  /** Energy of the fans alone at speeds, each working at its quietest: never above the true energy there. */
  readonly quietest: (speeds: Float64Array) => number;
  readonly passes: () => number;
}

/** Temperatures are solved this far [K], and a limit counts as held with this much to spare [K]. */
const ACCURACY = 1e-6;
const TO_SPARE = 2e-5;

/** Whether a sample holds all limits, by a hair more than rounding. */
export function holds(sample: Sample): boolean {
  return sample.worst <= -TO_SPARE;
}

/**
 * Prepares full passes of a build in a duty.
 *
 * @param machine the build
 * @param duty the state of use
 * @param changed conditions to change, for example no heat of the fans
 */
export function probeOf(machine: Machine, duty: Duty, changed: Partial<Conditions> = {}): Probe {
  const { enclosure } = machine.plant;
  const conditions = { ...conditionsOf(enclosure, duty), ...changed };
  const pass = createPass(machine);
  const state = newPassState(machine);
  const noise = newNoiseState(machine);
  const { fanFloor } = enclosure.assumptions.sound;
  let passes = 0;

  const largestExcess = (): number => {
    let worst = Number.NEGATIVE_INFINITY;
    enclosure.parts.forEach((part, index) => {
      for (const { of, temperature } of part.limits) {
        const found = (of === 'part' ? state.partTemperatures : state.partAir)[index] as number;
        worst = Math.max(worst, found - temperature + enclosure.margin);
      }
    });
    return worst;
  };
  /** Whether a part without a limit of its own gets hotter than it is taken to bear. */
  const spoils = (): boolean =>
    enclosure.parts.some(
      ({ limits }, index) =>
        limits.every(({ of }) => of !== 'part') &&
        (state.partTemperatures[index] as number) > enclosure.assumptions.heat.hottestPart,
    );

  return {
    floors: Float64Array.from(machine.banks, ({ bank }) => Math.log(bank.fan.holdFloor)),
    at: (speeds) => {
      passes += 1;
      coolDown(state);
      const ratios = speeds.map((speed) => Math.exp(speed));
      const failed = pass(conditions, ratios, state, ACCURACY) !== null;
      return {
        speeds: Float64Array.from(speeds),
        energy: failed ? Number.POSITIVE_INFINITY : soundEnergy(machine, ratios, state, noise),
        worst: failed || state.runaways.includes(1) || spoils() ? Number.POSITIVE_INFINITY : largestExcess(),
      };
    },
    quietest: (speeds) => {
      let sum = 0;
      machine.banks.forEach(({ bank, speedLevel, installation, nearness }, index) => {
        const level = levelAtRatio(speedLevel, Math.exp(speeds[index] as number)) + installation;
        sum += nearness * bank.count * (energy(level) + energy(fanFloor));
      });
      return sum / enclosure.listener.distance ** 2;
    },
    passes: () => passes,
  };
}
