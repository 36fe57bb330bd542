import type { Element } from '../../src/elements/element.ts';
import { askedLimits } from '../../src/enclosure/asked-limits.ts';
import type { Bank, Build, Duty, Enclosure, Place } from '../../src/enclosure/enclosure.ts';
import { assemble, type Machine, plantOf } from '../../src/enclosure/machine.ts';
import { flowShare, newNoiseState, soundEnergy } from '../../src/enclosure/noise.ts';
import { createPass } from '../../src/enclosure/pass.ts';
import { conditionsOf, newPassState, type PassState } from '../../src/enclosure/pass-state.ts';
import { UNCERTAINTIES } from '../../src/enclosure/uncertainties.ts';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { curveFromPoints, type FanCurve } from '../../src/fan/curve.ts';
import type { Random } from '../search/random.ts';

/**
 * What a scenario might truly be like: its data are changed as the stated uncertainties allow, and the result is given
 * to the ordinary solver. Nothing of the bands is used but the stated figures.
 */

/** Standard normal draws by name: one thing is off by the same amount wherever it matters. */
export type Draw = (name: string) => number;

/** Source: Box and Muller (1958), from memory. */
export function newDraw(random: Random): Draw {
  const known = new Map<string, number>();
  return (name) => {
    let value = known.get(name);
    if (value === undefined) {
      value = Math.sqrt(-2 * Math.log(1 - random.unit())) * Math.cos(2 * Math.PI * random.unit());
      known.set(name, value);
    }
    return value;
  };
}

/** 95 % quantile of the standard normal distribution. Source: any table of it. */
const K = 1.6449;
const within = (share: number, z: number): number => (1 + share) ** (z / K);

/** The build at work as stated. */
export interface Stated {
  readonly machine: Machine;
  readonly duty: Duty;
  readonly ratios: Float64Array;
  readonly state: PassState;
}

export function statedAt(
  enclosure: Enclosure,
  build: Build,
  duty: Duty,
  ratios: Float64Array,
): Stated | null {
  const machine = assemble(plantOf(enclosure), build);
  const state = newPassState(machine);
  const failure = createPass(machine)(conditionsOf(enclosure, duty), ratios, state, 1e-7);
  return failure ? null : { machine, duty, ratios, state };
}

/** What fans have in common, by the assumed correlations of fans of one model and of any two. */
function together(
  draw: Draw,
  what: string,
  { fan, count }: Bank,
  place: string,
  enclosure: Enclosure,
): number {
  const { sameModel, otherModel } = enclosure.assumptions.sound.correlation;
  const all = Math.sqrt(otherModel) * draw(what);
  const model = Math.sqrt(sameModel - otherModel) * draw(`${what} ${fan.id}`);
  return all + model + Math.sqrt((1 - sameModel) / count) * draw(`${what} ${fan.id} ${place}`);
}

function movedCurve(curve: FanCurve, factor: number): FanCurve {
  if (curve.synthesised) {
    const middle = curve.raw.pressures[5] as number;
    // p/p0 = (1 - x)(1 + (1 - a) x) at x = 1/2 gives the share a the curve was made with.
    const linear = 1 - 2 * (middle / (curve.shutOff / 2) - 1);
    return curveFromBox(
      curve.freeDelivery * factor,
      curve.shutOff * factor ** 2,
      Math.min(1, Math.max(0, linear)),
    );
  }
  return curveFromPoints({
    flows: curve.raw.flows.map((flow) => flow * factor),
    pressures: curve.raw.pressures.map((pressure) => pressure * factor ** 2),
  });
}

/** One-sigma of a fan's level, floor left out, from the assumptions [dB]. */
function levelSigma(stated: Stated, index: number): number {
  const { machine, ratios, state } = stated;
  const bank = machine.banks[index];
  const { sound } = machine.plant.enclosure.assumptions;
  if (!bank) throw new RangeError('no such bank');
  const { fan } = bank.bank;
  const share = flowShare(machine, bank, ratios[index] as number, state);
  const speeds = fan.ratings.map(({ speed }) => speed / fan.fullSpeed);
  const least = fan.ratings.length > 2 ? Math.min(...speeds) : Math.max(...speeds);
  const decades = Math.max(0, Math.log10(least / (ratios[index] as number)));
  const knots = sound.workingPoint;
  const knot = knots.findLast(({ flowShare: from }) => share >= from) ?? knots[0];
  const stalled = share < fan.curve.peakFlow / fan.curve.freeDelivery;
  const working = stalled
    ? sound.stall.uncertainty
    : share > 1
      ? sound.overdrivenUncertainty
      : (knot?.uncertainty ?? 0);
  const term = bank.installation - sound.panelMounting;
  const rated = fan.ratings.every(({ basisStated }) => basisStated) ? 2 : Math.hypot(3, 2);
  return Math.hypot(
    rated,
    bank.speedLevel.exponentUncertainty * decades,
    working,
    term > 0 ? Math.max(1, 0.5 * term) : 0,
  );
}

function trueBank(bank: Bank, stated: Stated, place: Place, draw: Draw): Bank {
  const { machine, ratios, state } = stated;
  const { enclosure } = machine.plant;
  const index = machine.banks.findIndex((each) => enclosure.places[each.place]?.id === place.id);
  const own = machine.banks[index];
  if (!own) return bank;
  const ratio = ratios[index] as number;
  const { fan } = bank;
  const z = together(draw, 'curve', bank, place.id, enclosure);
  // Box figures: ±8 % above half of free delivery, −20 to +8 % below; datasheets ±10 %.
  const low = flowShare(machine, own, ratio, state) > 0.5 ? 0.08 : 0.2;
  const factor =
    fan.curve.synthesised && z < 0 ? (1 - low) ** (-z / K) : within(fan.curve.synthesised ? 0.08 : 0.1, z);
  const slow = (1 - (0.05 * (1 - ratio)) / 0.5) ** (Math.max(0, -draw('slow')) / K);
  const louder = levelSigma(stated, index) * together(draw, 'noise', bank, place.id, enclosure);
  return {
    ...bank,
    fan: {
      ...fan,
      curve: movedCurve(fan.curve, factor * slow),
      power: fan.power * within(UNCERTAINTIES.fanPower, draw(`power ${fan.id}`)),
      ratings: fan.ratings.map((rating) => ({ ...rating, level: rating.level + louder })),
    },
  };
}

function trueElement(element: Element, place: Place, behind: boolean, draw: Draw): Element {
  const loss = within(element.lossUncertainty, draw(`loss ${place.id}`));
  const { law, finResistance } = element;
  const fins = within(behind ? 0.25 : 0.1, draw(`fins ${place.id}`));
  return {
    ...element,
    viscous: element.viscous * loss,
    inertial: element.inertial * loss,
    faint: element.faint * loss,
    ...(law
      ? {
          law: {
            loss: (flow: number, density: number, viscosity: number) =>
              loss * law.loss(flow, density, viscosity),
            slope: (flow: number, density: number, viscosity: number) =>
              loss * law.slope(flow, density, viscosity),
          },
        }
      : {}),
    ...(finResistance
      ? {
          finResistance: (flow: number, air: Parameters<typeof finResistance>[1]) =>
            Math.max(fins * finResistance(flow, air), 1 / (air.density * Math.abs(flow) * air.specificHeat)),
        }
      : {}),
  };
}

/** Whether fans stand right before a place in its leg. */
function behindFans(enclosure: Enclosure, build: Build, index: number): boolean {
  const through = enclosure.legs.find((leg) => leg.through.includes(index))?.through ?? [];
  const before = through.slice(0, through.indexOf(index)).reverse();
  for (const place of before) {
    const there = enclosure.places[place];
    if (there?.kind === 'element') return false;
    if (there?.options[build[place] ?? 0]) return true;
  }
  return false;
}

function truePlace(place: Place, index: number, stated: Stated, draw: Draw): Place {
  const { machine } = stated;
  const { build, plant } = machine;
  const { enclosure } = plant;
  if (place.kind === 'bank') {
    const bank = place.options[build[index] ?? 0] ?? null;
    return { ...place, options: [bank && trueBank(bank, stated, place, draw)] };
  }
  const option = place.options[build[index] ?? 0];
  if (!option) throw new RangeError('no such option');
  const element = trueElement(option.element, place, behindFans(enclosure, build, index), draw);
  // The law of openings is off alike for all to 80 %, the rest is each opening's own.
  const louder = 5 * (Math.sqrt(0.8) * draw('openings') + Math.sqrt(0.2) * draw(`opening ${place.id}`));
  const heard = { ...place.heard, directivity: (place.heard?.directivity ?? 0) + louder };
  return { ...place, options: [{ ...option, element }], heard };
}

/** One enclosure as it might truly be, with one build. */
function trueEnclosure(stated: Stated, draw: Draw): Enclosure {
  const { enclosure } = stated.machine.plant;
  const { sound } = enclosure.assumptions;
  return {
    ...enclosure,
    places: enclosure.places.map((place, index) => truePlace(place, index, stated, draw)),
    legs: enclosure.legs.map((leg) => ({
      ...leg,
      recirculation: Math.min(
        Math.max(0.95, leg.recirculation),
        leg.recirculation * within(0.5, draw(`again ${leg.id}`)),
      ),
    })),
    parts: enclosure.parts.map((part) => ({
      ...part,
      power: part.power * within(0.1, draw(`heat ${part.id}`)),
      resistance: part.resistance * within(0.2, draw(`fixed ${part.id}`)),
    })),
    assumptions: {
      ...enclosure.assumptions,
      sound: {
        ...sound,
        fanFloor: sound.fanFloor + 3 * draw('floor'),
        panelMounting: sound.panelMounting + 2 * draw('panel'),
        attenuation: sound.attenuation - 3 * draw('way out'),
      },
    },
  };
}

/** What is compared with bands. */
export interface Truth {
  readonly energy: number;
  readonly margins: readonly number[];
  readonly temperatures: readonly number[];
}

/** Solves what might truly be; null if it has no solution. */
export function truthOf(stated: Stated, draw: Draw): Truth | null {
  const enclosure = trueEnclosure(stated, draw);
  const duty = { ...stated.duty, room: stated.duty.room + draw('room') / K };
  const machine = assemble(
    plantOf(enclosure),
    enclosure.places.map(() => 0),
  );
  const state = newPassState(machine);
  if (createPass(machine)(conditionsOf(enclosure, duty), stated.ratios, state, 1e-5)) return null;
  return {
    energy: soundEnergy(machine, stated.ratios, state, newNoiseState(machine)),
    margins: askedLimits(machine, duty).map(({ limit, found }) => limit - found(state)),
    temperatures: Array.from(state.partTemperatures),
  };
}
