import type { SeriesLeg } from '../airway/series.ts';
import { askedLimits } from '../enclosure/asked-limits.ts';
import type { Build, Duty, Enclosure } from '../enclosure/enclosure.ts';
import { assemble, type Plant } from '../enclosure/machine.ts';
import { newNoiseState, soundEnergy } from '../enclosure/noise.ts';
import { createPass } from '../enclosure/pass.ts';
import { type Conditions, conditionsOf, newPassState, type PassState } from '../enclosure/pass-state.ts';
import type { KilogramsPerSecond, Pascals } from '../quantities/dimensions.ts';
import { inflowFinder } from './least-inflow.ts';
import type { OneChamberPlan } from './one-chamber-plan.ts';
import { type Prescription, prescribedFlows } from './prescribed-flows.ts';

/** What the fans of a leg are asked for: a flow and the pressure rise that goes with it. */
export interface LegDemand {
  /** Least mass flow [kg/s]. */
  readonly flow: KilogramsPerSecond;
  /** Loss of the passive elements at a mass flow not below the least one [Pa]. */
  readonly lossAt: (flow: KilogramsPerSecond) => Pascals;
  /** Density at each stage at the least flow [kg/m³]. */
  readonly densities: Float64Array;
  /** Viscosity there [Pa·s]. */
  readonly viscosities: Float64Array;
  /** Sound energy of the leg's openings at 1 m, at the least flow [-]. */
  readonly vents: number;
}

/** What must at least be done at one pressure of the chamber. */
export interface Demand {
  readonly pressure: Pascals;
  /** Least inflow by fans that keeps all limits at this pressure [kg/s]; infinite if none does. */
  readonly required: KilogramsPerSecond;
  /** What the passive legs let out at this pressure [kg/s], ≥ 0. */
  readonly released: KilogramsPerSecond;
  readonly inward: LegDemand | null;
  readonly outward: LegDemand | null;
}

/** The scenario with nothing in its bank places. */
export function withoutFans(enclosure: Enclosure): Enclosure {
  return {
    ...enclosure,
    places: enclosure.places.map((place) => (place.kind === 'bank' ? { ...place, options: [null] } : place)),
  };
}

/** Works out demands at any pressure of the chamber, for one set of elements and one duty. */
export type DemandAt = (pressure: Pascals) => Demand;

/**
 * Prepares the demands of a set of elements in a duty on an airway with one chamber.
 *
 * At a given pressure of the chamber the passive legs' flows are known, so the least flow of the inward leg that
 * keeps every limit follows from the heat alone, whatever the fans are; the outward leg must carry the sum.
 * Heat of the fans and recirculation are left out (the plan has none): the demand is never too high.
 *
 * @param coolPlant plan of the airway without fans and recirculation, made of `withoutFans`
 * @param plan which legs hold fans
 * @param elements build of which only the elements matter
 * @param duty the state of use
 */
export function createDemand(coolPlant: Plant, plan: OneChamberPlan, elements: Build, duty: Duty): DemandAt {
  const { enclosure } = coolPlant;
  const wanted: Prescription = { pressure: 0, inflow: 0, passiveInflow: 0 };
  const balance = prescribedFlows(plan, enclosure, wanted);
  const build = elements.map((option, index) => (enclosure.places[index]?.kind === 'bank' ? 0 : option));
  const machine = assemble({ ...coolPlant, balance }, build);
  const conditions: Conditions = { ...conditionsOf(enclosure, duty), fanHeat: 0 };
  const pass = createPass(machine);
  let state: PassState = newPassState(machine);
  const noise = newNoiseState(machine);
  const limits = askedLimits(machine, duty);
  const none = new Float64Array(0);

  /** Largest excess over the limits with a given inflow [K]. */
  const excess = (inflow: number): number => {
    wanted.inflow = inflow;
    if (pass(conditions, none, state, 1e-5)) return Number.POSITIVE_INFINITY;
    let worst = Number.NEGATIVE_INFINITY;
    for (const { found, limit } of limits) worst = Math.max(worst, found(state) - limit + enclosure.margin);
    return worst;
  };

  const leastInflow = inflowFinder(excess);

  /** Without fans that blow in, the limits either hold at this pressure or do not. */
  const requiredOfPassive = (): number => (excess(0) <= 0 ? 0 : Number.POSITIVE_INFINITY);

  const demandOf = (leg: number, flow: number): LegDemand => {
    const series = machine.legs[leg] as SeriesLeg;
    soundEnergy(machine, none, state, noise);
    let vents = 0;
    machine.vents.forEach((vent, index) => {
      if (vent.leg === leg) vents += noise.vents[index] as number;
    });
    const densities = Float64Array.from(series.densities);
    const viscosities = Float64Array.from(series.viscosities);
    const lossAt = (at: number): Pascals => {
      series.densities.set(densities);
      series.viscosities.set(viscosities);
      series.refresh();
      series.evaluate(at);
      return series.loss;
    };
    return { flow, lossAt, densities, viscosities, vents };
  };

  return (pressure) => {
    wanted.pressure = pressure;
    // Each demand starts anew: what it comes to must not depend on which were asked for before.
    state = newPassState(machine);
    const required = plan.inward === null ? requiredOfPassive() : leastInflow();
    const released = Math.max(0, -wanted.passiveInflow);
    if (plan.inward !== null && !Number.isFinite(required)) {
      return { pressure, required, released, inward: null, outward: null };
    }
    // Mass must balance: what passive legs let out must come in.
    const inflow = plan.inward === null ? 0 : Math.max(required, released);
    excess(inflow);
    const outflow = Math.max(0, inflow + wanted.passiveInflow);
    return {
      pressure,
      required,
      released,
      inward: plan.inward === null ? null : demandOf(plan.inward, inflow),
      outward: plan.outward === null ? null : demandOf(plan.outward, outflow),
    };
  };
}
