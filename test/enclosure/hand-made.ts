import type { Element } from '../../src/elements/element.ts';
import { ASSUMPTIONS, type Assumptions } from '../../src/enclosure/assumptions.ts';
import type {
  Bank,
  BankPlace,
  Duty,
  ElementPlace,
  Enclosure,
  Limit,
  Part,
  Place,
} from '../../src/enclosure/enclosure.ts';
import { assemble, type Machine, plantOf } from '../../src/enclosure/machine.ts';
import { createPass, type PassFailure } from '../../src/enclosure/pass.ts';
import { conditionsOf, newPassState, type PassState } from '../../src/enclosure/pass-state.ts';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import type { FanModel } from '../../src/fan/fan-model.ts';

/** 0 °C [K]. */
export const ZERO = 273.15;

/** An invented fan: a parabola of 40 Pa and 0.03 m³/s, 92 mm, 31.5 dB at 2000 revolutions a minute, no power. */
export function fanWith(changes: Partial<FanModel> = {}): FanModel {
  return {
    id: 'invented',
    size: 0.092,
    depth: 0.025,
    fullSpeed: 2000 / 60,
    holdFloor: 0.2,
    startFloor: 0.3,
    curve: curveFromBox(0.03, 40, 0),
    ratings: [{ speed: 2000 / 60, level: 31.5, basisStated: true }],
    power: 0,
    provenance: 'invented',
    ...changes,
  };
}

/** A place for one element. */
export function elementPlace(element: Element, id = 'element'): ElementPlace {
  return { kind: 'element', id, options: [{ label: '', element }] };
}

interface BankPlaceFields {
  readonly id?: string;
  readonly depth?: number;
  readonly inletGap?: number;
  readonly outletGap?: number;
  readonly inletWall?: number;
  readonly outletWall?: number;
  readonly inletBar?: number;
  readonly outletBar?: number;
}

/** A place for fans, with what may stand there; by default far from everything. */
export function bankPlace(options: readonly (Bank | null)[], fields: BankPlaceFields = {}): BankPlace {
  return { kind: 'bank', id: 'bank', options, depth: 0.025, inletGap: 1, outletGap: 1, ...fields };
}

/** Fans of one model in a place of their own. */
export function fans(fan: FanModel, count = 1, fields: BankPlaceFields = {}): BankPlace {
  return bankPlace([{ fan, count }], fields);
}

/** An element that loses a·Q + b·Q|Q| at 1.2 kg/m³ and 1.81e-5 Pa·s. */
export function lossOfForm(a: number, b: number): Element {
  return { viscous: a / 1.81e-5, inertial: b / 1.2, faint: 0, lossUncertainty: 0, remarks: [] };
}

/** A leg as drawn: chambers by number, places themselves. */
export interface DrawnLeg {
  readonly from: number;
  readonly to: number;
  readonly through: readonly Place[];
  readonly recirculation?: number;
  readonly rise?: number;
}

/** A part as drawn, on the fins of a place or in a chamber. */
export interface DrawnPart {
  readonly power: number;
  readonly on?: Place;
  readonly in?: number;
  readonly resistance?: number;
  readonly slope?: number;
  readonly powerAt?: number;
  readonly limits?: readonly Limit[];
}

/** An enclosure as drawn; dry air of 25 °C at sea level unless said otherwise. */
export interface Drawing {
  /** Number of chambers beside outside. */
  readonly inner: number;
  readonly legs: readonly DrawnLeg[];
  readonly parts?: readonly DrawnPart[];
  readonly room?: number;
  readonly pressure?: number;
  readonly relativeHumidity?: number;
  readonly distance?: number;
  readonly assumptions?: Assumptions;
}

/** Puts an enclosure together, with one duty at full heat. */
export function enclosureOf(drawing: Drawing): Enclosure {
  const places = drawing.legs.flatMap((leg) => leg.through);
  const parts = (drawing.parts ?? []).map(
    (part, index): Part => ({
      id: `part ${index}`,
      power: part.power,
      slope: part.slope ?? 0,
      powerAt: part.powerAt ?? 50 + ZERO,
      seat: part.on
        ? { kind: 'fins', place: places.indexOf(part.on) }
        : { kind: 'chamber', chamber: part.in ?? 1 },
      resistance: part.resistance ?? 0,
      limits: part.limits ?? [],
    }),
  );
  return {
    title: 'invented',
    site: { pressure: drawing.pressure ?? 101_325, relativeHumidity: drawing.relativeHumidity ?? 0 },
    listener: { distance: drawing.distance ?? 1 },
    chambers: ['outside', ...Array.from({ length: drawing.inner }, (_, index) => `chamber ${index + 1}`)],
    places,
    legs: drawing.legs.map((leg, index) => ({
      id: `leg ${index}`,
      from: leg.from,
      to: leg.to,
      through: leg.through.map((place) => places.indexOf(place)),
      recirculation: leg.recirculation ?? 0,
      ...(leg.rise === undefined ? {} : { rise: leg.rise }),
    })),
    parts,
    duties: [{ id: 'work', share: 1, heat: parts.map(() => 1), room: drawing.room ?? 25 + ZERO }],
    builds: [],
    margin: 0,
    assumptions: drawing.assumptions ?? ASSUMPTIONS,
  };
}

/** The build with the first option everywhere, unless others are named. */
export function machineOf(drawing: Drawing, build?: readonly number[]): Machine {
  const enclosure = enclosureOf(drawing);
  return assemble(plantOf(enclosure), build ?? enclosure.places.map(() => 0));
}

/** The only duty of a hand-made enclosure. */
export function dutyOf(machine: Machine): Duty {
  const [duty] = machine.plant.enclosure.duties;
  if (!duty) throw new RangeError('a hand-made enclosure has one duty');
  return duty;
}

/** A pass and how it went. */
export interface Passed {
  readonly machine: Machine;
  readonly ratios: Float64Array;
  readonly state: PassState;
  readonly failure: PassFailure | null;
}

/** Makes a pass from nothing; all banks at full speed unless said otherwise. */
export function passOf(machine: Machine, speeds: readonly number[] = [], tolerance = 1e-9): Passed {
  const ratios = Float64Array.from(machine.banks, (_, bank) => speeds[bank] ?? 1);
  const state = newPassState(machine);
  const conditions = conditionsOf(machine.plant.enclosure, dutyOf(machine));
  const failure = createPass(machine)(conditions, ratios, state, tolerance);
  return { machine, ratios, state, failure };
}

/** Mass flow of a leg [kg/s]. */
export function flowOf({ state }: Passed, leg: number): number {
  return state.network.flows[leg] ?? Number.NaN;
}

/** Heat the air carries out of the box less what it brings in, and the heat given to it [W]. */
export function heatBalance({ machine, state }: Passed): {
  readonly carried: number;
  readonly given: number;
} {
  const { enclosure } = machine.plant;
  const { specificHeat } = conditionsOf(enclosure, dutyOf(machine));
  let carried = 0;
  enclosure.legs.forEach((leg, index) => {
    const flow = state.network.flows[index] ?? Number.NaN;
    const forward = flow >= 0;
    const [source, target] = forward ? [leg.from, leg.to] : [leg.to, leg.from];
    const own = state.chambers[source] ?? Number.NaN;
    const exhaust = state.chambers[state.chambers.length - 1] ?? Number.NaN;
    const share = source === 0 && forward ? leg.recirculation : 0;
    const entering = own + share * (exhaust - own);
    const heat = sumOf(state.stageHeat[index] ?? []);
    const capacity = Math.abs(flow) * specificHeat;
    if (target === 0) carried += capacity * entering + heat;
    if (source === 0) carried -= capacity * entering;
  });
  return { carried, given: sumOf(state.partPowers) + sumOf(state.fanPowers) };
}

function sumOf(values: Iterable<number>): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}
