import { type Air, airAt, type Site } from '../air/air.ts';
import type { SeriesLeg } from '../airway/series.ts';
import { REFERENCE_DENSITY } from '../fan/curve.ts';
import { pathResistance } from '../heat/heat-path.ts';
import { partPower, rises, settledPart } from '../heat/part-power.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import { shareFromFirst, streamAlong } from '../heat/stagnant-air.ts';
import type { KelvinDifference, Kelvins, KelvinsPerWatt, Watts } from '../quantities/dimensions.ts';
import type { Leg, Part } from './enclosure.ts';
import { enteringAir } from './entering-air.ts';
import type { Machine, MachineBank, MachineElement } from './machine.ts';
import { type Conditions, changeOf, HOTTEST_AIR, type PassState } from './pass-state.ts';

/** Change of a power by all of itself, as a change of temperature [K]: the heat must balance where all is hot, too. */
const FULL_CHANGE: KelvinDifference = 10;
/** Power below which its changes count in watts [W]. */
const LEAST_POWER: Watts = 1e-3;

function inletAir(seat: MachineElement, site: Site, state: PassState): Air {
  const temperature = (state.stages[seat.leg] as Float64Array)[seat.stage] as number;
  return airAt(site, Math.min(temperature, HOTTEST_AIR));
}

/** Resistance of the fins under a part at the present flow [K/W]; the parts of one stack share it. */
function finResistance(seat: MachineElement, site: Site, state: PassState): KelvinsPerWatt {
  const law = seat.element.finResistance;
  if (!law) return 0;
  const air = inletAir(seat, site, state);
  const flow = streamAlong(state.network.flows[seat.leg] as number);
  return Math.min(law(flow / air.density, air), HOPELESS);
}

/** Heat of parts and fans, sorted by where it enters the air. */
export function collectHeat(
  machine: Machine,
  conditions: Conditions,
  ratios: Float64Array,
  state: PassState,
  legHeat: Float64Array,
  chamberHeat: Float64Array,
): void {
  legHeat.fill(0);
  chamberHeat.fill(0);
  for (const heat of state.stageHeat) heat.fill(0);
  const give = (leg: number, stage: number, watts: Watts): void => {
    const heat = state.stageHeat[leg] as Float64Array;
    heat[stage] = (heat[stage] as number) + watts;
    legHeat[leg] = (legHeat[leg] as number) + watts;
  };
  machine.banks.forEach((bank, index) => {
    state.fanPowers[index] = fanPower(machine, bank, ratios[index] as number);
    give(bank.leg, bank.stage, conditions.fanHeat * (state.fanPowers[index] as number));
  });
  machine.plant.enclosure.parts.forEach((part, index) => {
    const seat = machine.seats[index];
    const watts = state.partPowers[index] as number;
    if (seat) give(seat.leg, seat.stage, watts);
    else if (part.seat.kind === 'chamber') {
      chamberHeat[part.seat.chamber] = (chamberHeat[part.seat.chamber] as number) + watts;
    }
  });
}

/** Electrical power of a bank [W]: rated power · r³ · ρ/ρ_ref for each fan. */
function fanPower(machine: Machine, bank: MachineBank, ratio: number): Watts {
  const density = (machine.legs[bank.leg] as SeriesLeg).densities[bank.stage] as number;
  return bank.bank.count * bank.bank.fan.power * ratio ** 3 * (density / REFERENCE_DENSITY);
}

/** Warms the air of a leg along its stream; returns the largest change of a stage's temperature [K]. */
function warmAlong(
  entering: Kelvins,
  capacity: number,
  heat: Float64Array,
  temperatures: Float64Array,
  isForward: boolean,
): KelvinDifference {
  const last = temperatures.length - 1;
  let change = 0;
  let warmed = 0;
  for (let count = 0; count <= last; count++) {
    const stage = isForward ? count : last - count;
    const temperature = entering + warmed / capacity;
    warmed += heat[stage] as number;
    change = Math.max(change, changeOf(temperatures[stage] as number, temperature));
    temperatures[stage] = temperature;
  }
  return change;
}

/** Air of both ends where it hardly moves, a share of it from the first. */
function warmBothWays(
  ends: { readonly first: Kelvins; readonly last: Kelvins; readonly share: number },
  capacity: number,
  heat: Float64Array,
  temperatures: Float64Array,
): KelvinDifference {
  const { first, last, share } = ends;
  let change = 0;
  let ahead = 0;
  let behind = 0;
  for (const watts of heat) ahead += watts;
  for (let stage = 0; stage < temperatures.length; stage++) {
    const here = heat[stage] as number;
    ahead -= here;
    const temperature = share * (first + behind / capacity) + (1 - share) * (last + ahead / capacity);
    behind += here;
    change = Math.max(change, changeOf(temperatures[stage] as number, temperature));
    temperatures[stage] = temperature;
  }
  return change;
}

/**
 * Warms the air of each leg along its stream; where it hardly moves a leg holds air of both its ends. Returns the largest
 * change of a stage's temperature [K].
 */
export function march(machine: Machine, conditions: Conditions, state: PassState): number {
  const { legs } = machine.plant.enclosure;
  let change = 0;
  for (let index = 0; index < legs.length; index++) {
    const leg = legs[index] as Leg;
    const flow = state.network.flows[index] as number;
    const capacity = streamAlong(flow) * conditions.specificHeat;
    const heat = state.stageHeat[index] as Float64Array;
    const temperatures = state.stages[index] as Float64Array;
    const share = shareFromFirst(flow);
    const isForward = share === 1;
    const changed =
      isForward || share === 0
        ? warmAlong(enteringAir(leg, isForward, state), capacity, heat, temperatures, isForward)
        : warmBothWays(
            { first: enteringAir(leg, true, state), last: enteringAir(leg, false, state), share },
            capacity,
            heat,
            temperatures,
          );
    change = Math.max(change, changed);
  }
  return change;
}

/** Power of the other parts on the same fins [W]. */
export function sharedPower(machine: Machine, index: number, state: PassState): Watts {
  const place = machine.seats[index]?.place;
  if (place === undefined) return 0;
  let power = 0;
  for (let other = 0; other < machine.seats.length; other++) {
    if (other !== index && machine.seats[other]?.place === place) power += state.partPowers[other] as number;
  }
  return power;
}

/** Temperatures and powers of all parts at the present air; returns the largest change of power, as kelvin. */
export function settleParts(machine: Machine, conditions: Conditions, state: PassState): number {
  const { parts } = machine.plant.enclosure;
  let change = 0;
  for (let index = 0; index < parts.length; index++) {
    const part = parts[index] as Part;
    const seat = machine.seats[index] ?? null;
    const fins = seat ? finResistance(seat, conditions.site, state) : 0;
    const air = airAtPart(part, seat, state);
    const base = air + fins * sharedPower(machine, index, state);
    const factor = conditions.heat[index] as number;
    const resistance = fins + pathResistance(part, fins);
    const held = conditions.held?.get(index);
    const temperature =
      held === undefined ? settledPart(part, factor, base, resistance) : base + resistance * held;
    const hopeless = temperature >= HOPELESS;
    const power = held ?? (hopeless ? part.power * factor : partPower(part, factor, temperature));
    const growth = Math.abs(power - (state.partPowers[index] as number)) / Math.max(power, LEAST_POWER);
    const warming = changeOf(state.partTemperatures[index] as number, temperature);
    change = Math.max(change, warming, growth * FULL_CHANGE);
    state.finResistances[index] = fins;
    state.partAir[index] = air;
    state.partTemperatures[index] = temperature;
    state.partPowers[index] = power;
    state.runaways[index] = hopeless && rises(part) ? 1 : 0;
  }
  return change;
}

function airAtPart(part: Part, seat: MachineElement | null, state: PassState): Kelvins {
  if (seat) return (state.stages[seat.leg] as Float64Array)[seat.stage] as number;
  return part.seat.kind === 'chamber' ? (state.chambers[part.seat.chamber] as number) : 0;
}
