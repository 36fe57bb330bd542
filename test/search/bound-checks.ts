import type { Build, Duty, Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, type Machine, plantOf } from '../../src/enclosure/machine.ts';
import { createPass } from '../../src/enclosure/pass.ts';
import { conditionsOf, newPassState } from '../../src/enclosure/pass-state.ts';
import { createAirPowerBound } from '../../src/search/air-power-bound.ts';
import { coolingAllowance, coolPlantOf, coolTrials } from '../../src/search/cooling-bound.ts';
import { OBJECTIVES } from '../../src/search/objective.ts';
import { optionForest } from '../../src/search/option-tree.ts';
import { createPromises } from '../../src/search/promise.ts';
import { OPEN } from '../../src/search/space.ts';
import { levelOf } from '../../src/sound/levels.ts';
import { type Fineness, quietestByForce, survives } from './brute-force.ts';
import { buildsOf } from './builds.ts';
import { probeOf } from './probe.ts';
import { type Random, seeded } from './random.ts';

/** Excess over each limit at given speeds, no heat of the fans [K]; empty without a solution. */
function excesses(machine: Machine, duty: number): (ratios: Float64Array) => readonly number[] {
  const { enclosure } = machine.plant;
  const state = enclosure.duties[duty];
  if (!state) throw new RangeError(`no duty ${duty}`);
  const conditions = { ...conditionsOf(enclosure, state), fanHeat: 0 };
  const pass = createPass(machine);
  const found = newPassState(machine);
  return (ratios) => {
    if (pass(conditions, ratios, found, 1e-9) || found.runaways.includes(1)) return [];
    return enclosure.parts.flatMap((part, index) =>
      part.limits.map(({ of, temperature }) => {
        const there = (of === 'part' ? found.partTemperatures : found.partAir)[index] ?? 0;
        return there - temperature + enclosure.margin;
      }),
    );
  };
}

/** A rise of one speed that warmed a limited part. */
export interface Warming {
  readonly build: Build;
  readonly duty: string;
  readonly ratios: readonly number[];
  readonly bank: number;
  readonly raisedTo: number;
  /** How much warmer the part got [K], and its excess over the limit after that [K]. */
  readonly by: number;
  readonly excess: number;
}

/**
 * Raises one speed at a time from random speeds at which all limits hold, without heat of the fans and
 * recirculation, and returns the raise that warmed a limited part most, or null if none warmed any.
 *
 * @param enclosure the scenario
 * @param seed of the speeds
 * @param raises tried per build and duty
 */
export function worstWarming(enclosure: Enclosure, seed: number, raises: number): Warming | null {
  const random = seeded(seed);
  const plant = coolPlantOf(enclosure);
  let worst: Warming | null = null;
  for (const build of buildsOf(enclosure)) {
    const machine = assemble(plant, build);
    if (machine.banks.length === 0) continue;
    enclosure.duties.forEach((duty, index) => {
      const excess = excesses(machine, index);
      for (let count = 0; count < raises; count++) {
        const { ratios, bank, raised } = randomRaise(random, machine);
        const before = excess(ratios);
        if (before.length === 0 || before.some((over) => over > 0)) continue;
        const after = excess(raised);
        before.forEach((over, limit) => {
          const there = after[limit] ?? Number.POSITIVE_INFINITY;
          const by = there - over;
          if (by > (worst?.by ?? 0)) {
            const raisedTo = raised[bank] ?? 0;
            worst = { build, duty: duty.id, ratios: [...ratios], bank, raisedTo, by, excess: there };
          }
        });
      }
    });
  }
  return worst;
}

function randomRaise(random: Random, machine: Machine) {
  const ratios = Float64Array.from(machine.banks, ({ bank }) => bank.fan.holdFloor ** random.unit());
  const bank = random.whole(0, ratios.length - 1);
  const raised = Float64Array.from(ratios);
  raised[bank] = (ratios[bank] as number) ** (random.chance(0.5) ? random.unit() : 0.98);
  return { ratios, bank, raised };
}

/** A bound that claims too much of a build in a duty. */
export interface Overclaim {
  readonly bound: string;
  readonly build: Build;
  readonly duty: string;
  /** How much too much: level over the true one [dB], or excess over what the bound allows [K]. */
  readonly by: number;
  /** Level at 1 m the build reaches by brute force [dB]; −∞ where it only has to survive. */
  readonly reached: number;
}

/** Rounding of levels, and what brute force may be above the truth [dB]. */
const ROUNDING = 1e-6;

/** Factors on the energy reached, at which the cooling bound must let a build pass. */
const LARGER = [1 + 1e-9, 1.02, 1.3, 3, 30, Number.POSITIVE_INFINITY];

/**
 * Compares every bound with what every build reaches by brute force.
 *
 * @param enclosure the scenario
 * @param monotone whether the cooling bound is used in it
 * @param fineness of the brute force
 * @param seed of the places left open
 */
export function overclaims(
  enclosure: Enclosure,
  monotone: boolean,
  fineness: Fineness,
  seed: number,
): readonly Overclaim[] {
  const random = seeded(seed);
  const plant = plantOf(enclosure);
  const coolPlant = coolPlantOf(enclosure);
  const forest = optionForest(enclosure);
  const airPower = createAirPowerBound(enclosure, forest);
  const promises = createPromises(enclosure, plant, OBJECTIVES.mean, forest);
  const { none, coarse, fine } = promises;
  const endless = Number.POSITIVE_INFINITY;
  const distance = enclosure.listener.distance ** 2;
  const found: Overclaim[] = [];
  const check = (build: Build, index: number, reached: number): void => {
    const duty = enclosure.duties[index]?.id ?? '';
    const opened = build.map((option, place) =>
      enclosure.places[place]?.kind === 'bank' && random.chance(0.5) ? OPEN : option,
    );
    /** The build with some places holding a group that has their option. */
    const grouped = build.map((option, place) => {
      const groups = (forest[place] ?? []).flatMap(({ options }, group) =>
        options.includes(option) ? [-1 - group] : [],
      );
      const isBank = enclosure.places[place]?.kind === 'bank';
      return isBank && random.chance(0.7) ? (groups[random.whole(0, groups.length - 1)] ?? option) : option;
    });
    const ofSet = coarse(opened, none, endless);
    const claims = {
      'air power': airPower(build)[index],
      'coarse promise': coarse(build, none, endless).energies[index],
      'coarse promise, open places': ofSet.energies[index],
      'coarse promise, groups': coarse(grouped, none, endless).energies[index],
      'promise from that of its set': fine(build, ofSet, endless).energies[index],
      'fine promise': fine(build, none, endless).energies[index],
    };
    for (const [bound, claim = 0] of Object.entries(claims)) {
      const by = levelOf(claim) - levelOf(reached);
      if (by > ROUNDING) found.push({ bound, build, duty, by, reached: levelOf(reached) });
    }
    if (!monotone) return;
    const trials = coolTrials(coolPlant, build);
    for (const factor of LARGER) {
      const point = trials.coolestWithin(index, reached * factor);
      const by = point
        ? point.worst - coolingAllowance(plant, enclosure.duties[index] as Duty)
        : Number.POSITIVE_INFINITY;
      if (by > 0) found.push({ bound: `cooling at ${factor}`, build, duty, by, reached: levelOf(reached) });
    }
  };
  for (const build of buildsOf(enclosure)) {
    const machine = assemble(plant, build);
    enclosure.duties.forEach((duty, index) => {
      const probe = probeOf(machine, duty);
      if (duty.share === 0) {
        if (survives(probe, fineness)) check(build, index, Number.POSITIVE_INFINITY);
        return;
      }
      const best = quietestByForce(probe, fineness, Number.POSITIVE_INFINITY);
      if (best) check(build, index, best.energy * distance);
    });
  }
  return found;
}
