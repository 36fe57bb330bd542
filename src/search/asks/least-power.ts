import { densityAt } from '../../air/air.ts';
import { type Bank, type Build, type Enclosure, OUTSIDE, type Part } from '../../enclosure/enclosure.ts';
import type { Machine } from '../../enclosure/machine.ts';
import { conditionsOf, HOTTEST_AIR } from '../../enclosure/pass-state.ts';
import { peakAirPower, REFERENCE_DENSITY } from '../../fan/curve.ts';
import type { KelvinDifference, Kelvins, Watts } from '../../quantities/dimensions.ts';
import { levelOf } from '../../sound/levels.ts';
import { neededAirPower } from '../needed-air.ts';
import type { OptionForest } from '../option-tree.ts';
import { quietestSpeeds } from '../quietest-speeds.ts';
import { elementKey } from '../space.ts';
import type { Point, Trial } from '../trial.ts';
import { optionCosts, sumOf } from './option-costs.ts';

/** What counts as much as a kelvin above a limit: a decibel above the cap. Sets the stride of the search only. */
const KELVINS_PER_DECIBEL: KelvinDifference = 1;

/** Least share of its power at full speed, at the density of reference, that a running bank can take [-]. */
function leastShare({ fan }: Bank, thinnest: number): number {
  return fan.holdFloor ** 3 * thinnest;
}

/** What fans may warm the air beyond the hottest part that has a limit [K]. Assumption. */
const FAN_HEAT_ALLOWANCE: KelvinDifference = 25;

/** Highest limit that keeps the air at a part; infinite if none does [K]. */
function airLimit({ seat, limits }: Part): Kelvins {
  // Air leaves fins no warmer than the part, but enters them as warm as it may be.
  const keeping = limits.filter(({ of }) => of === 'part' || (of === 'air' && seat.kind === 'chamber'));
  return Math.min(...keeping.map(({ temperature }) => temperature));
}

/** Temperature that no air in an adequate build exceeds [K]. */
function hottestAir({ parts }: Enclosure): Kelvins {
  const warming = parts.filter(({ seat }) => seat.kind === 'fins' || seat.chamber !== OUTSIDE);
  return Math.min(HOTTEST_AIR, Math.max(0, ...warming.map(airLimit)) + FAN_HEAT_ALLOWANCE);
}

/**
 * Least density of the air in an adequate build, over that of reference [-]; 1 at most.
 *
 * @param enclosure the scenario
 */
export function thinnestAir(enclosure: Enclosure): number {
  const { duties } = enclosure;
  const hottest = Math.max(hottestAir(enclosure), ...duties.map(({ room }) => room + FAN_HEAT_ALLOWANCE));
  const ratios = duties.map(
    (duty) => densityAt(conditionsOf(enclosure, duty).site, hottest) / REFERENCE_DENSITY,
  );
  return Math.min(1, ...ratios);
}

/**
 * Prepares a lower bound of the electrical power of the fans of a build or a set, mean over time [W]: none runs below
 * its hold floor, and none makes more air power of its electrical power than at the best point of its curve, at whatever
 * speed and density, as both grow alike.
 *
 * @param enclosure the scenario
 * @param forest groups of the options of its places
 */
export function createPowerBound(enclosure: Enclosure, forest: OptionForest): (build: Build) => Watts {
  const places = [...enclosure.places.keys()];
  const thinnest = thinnestAir(enclosure);
  const floors = optionCosts(enclosure, forest, (bank) =>
    bank ? bank.count * bank.fan.power * leastShare(bank, thinnest) : 0,
  );
  // Watts for a watt of air, so that the least stands for the best.
  const efforts = optionCosts(enclosure, forest, (bank) =>
    bank ? bank.fan.power / peakAirPower(bank.fan.curve) : Number.POSITIVE_INFINITY,
  );
  const needs = new Map<number, number>();
  const needOf = (build: Build): number => {
    const key = elementKey(enclosure, build);
    const known =
      needs.get(key) ??
      enclosure.duties.reduce(
        (sum, duty) => sum + (duty.share > 0 ? duty.share * neededAirPower(enclosure, build, duty) : 0),
        0,
      );
    needs.set(key, known);
    return known;
  };
  const banks = places.filter((place) => enclosure.places[place]?.kind === 'bank');
  return (build) => {
    const need = needOf(build);
    const least = Math.min(...banks.map((place) => efforts(build, place)));
    const air = need > 0 && Number.isFinite(least) ? need * least : 0;
    return Math.max(sumOf(floors, build, banks), air);
  };
}

/** The trial with the electrical power in place of the sound energy, and a cap on the latter. */
function powerTrial(trial: Trial, allowed: number): Trial {
  const { machine } = trial;
  const cap = levelOf(allowed);
  const thinnest = thinnestAir(machine.plant.enclosure);
  return {
    ...trial,
    evaluate: (ratios) => {
      const point = trial.evaluate(ratios);
      if (point.failure) return point;
      const over = KELVINS_PER_DECIBEL * (levelOf(point.energy) - cap);
      return {
        ...point,
        energy: point.fanPower,
        excess: Float64Array.from([...point.excess, over]),
        worst: Math.max(point.worst, over),
      };
    },
    leastEnergy: (ratios) =>
      machine.banks.reduce(
        (sum, { bank }, index) =>
          sum + bank.count * bank.fan.power * (ratios[index] as number) ** 3 * thinnest,
        0,
      ),
  };
}

/**
 * Speeds at which the fans of a build take the least electrical power, of those that hold every limit of a duty and are
 * no louder than allowed.
 *
 * @param trial build and duty
 * @param monotone whether faster is known never to warm any limited part in this airway
 * @param allowed sound energy at the listener [-]; infinite if there is no cap
 * @returns null if even the quietest adequate speeds are louder, or there are none
 */
export function leastPowerSpeeds(trial: Trial, monotone: boolean, allowed: number): Point | null {
  const { best } = quietestSpeeds(trial, monotone);
  if (!best || best.energy > allowed) return null;
  const capped = Number.isFinite(allowed) ? powerTrial(trial, allowed) : powerTrial(trial, Number.MAX_VALUE);
  const found = quietestSpeeds(capped, monotone, Number.POSITIVE_INFINITY, [best.ratios]).best;
  return found && found.energy < best.fanPower ? trial.evaluate(found.ratios) : best;
}

/**
 * Electrical power of the fans of a build, mean over time [W].
 *
 * @param machine the build
 * @param powers of its fans by duty [W]; a duty without a share does not count
 */
export function meanPower(machine: Machine, powers: readonly Watts[]): Watts {
  return machine.plant.enclosure.duties.reduce(
    (sum, { share }, index) => sum + (share > 0 ? share * (powers[index] as number) : 0),
    0,
  );
}
