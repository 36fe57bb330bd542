import type { SeriesLeg } from '../../src/airway/series.ts';
import { closenessLoss } from '../../src/airway/stage-flow.ts';
import { askedLimits } from '../../src/enclosure/asked-limits.ts';
import type { BankPlace, Duty, Enclosure } from '../../src/enclosure/enclosure.ts';
import {
  assemble,
  type Machine,
  type MachineBank,
  type Plant,
  plantOf,
} from '../../src/enclosure/machine.ts';
import { newNoiseState, soundEnergy } from '../../src/enclosure/noise.ts';
import { createPass } from '../../src/enclosure/pass.ts';
import { conditionsOf, newPassState, type PassState } from '../../src/enclosure/pass-state.ts';
import { type BankTable, bankTable, SPEEDS } from './bank-table.ts';

/** Flows at which the path is tabled, over the least that cools enough [-]. */
const FLOWS = [1, 1.05, 1.12, 1.25, 1.5, 2, 2.6];
const TOLERANCE = 1e-9;
const HALVINGS = 60;

/** A bank option where a set of banks is filled: one table a flow, in each duty. */
export interface OptionTable {
  /** Index among the bank places, and among the options there [-]. */
  readonly bank: number;
  readonly option: number;
  /** Which set of banks is filled: one bit a bank place. */
  readonly filled: number;
  readonly tables: readonly (readonly BankTable[])[];
}

/** Loss of the path [Pa] and energy of its openings [-], by duty, filled set and flow. */
export interface PathTable {
  readonly filled: readonly number[];
  readonly flows: number;
  readonly speeds: number;
  readonly losses: readonly (readonly (readonly number[])[])[];
  readonly vents: readonly (readonly (readonly number[])[])[];
  readonly options: readonly OptionTable[];
}

/** A pass at one common speed of all banks without the fans' own heat; what it found stays in `state`. */
interface Run {
  readonly machine: Machine;
  readonly state: PassState;
  readonly at: (ratio: number) => void;
}

function runOf(plant: Plant, build: readonly number[], duty: Duty): Run {
  const machine = assemble(plant, build);
  const pass = createPass(machine);
  const state = newPassState(machine);
  const conditions = { ...conditionsOf(plant.enclosure, duty), fanHeat: 0 };
  return {
    machine,
    state,
    at: (ratio) => {
      const ratios = new Float64Array(machine.banks.length).fill(ratio);
      const failure = pass(conditions, ratios, state, TOLERANCE);
      if (failure) throw new Error(failure);
    },
  };
}

/** Common speed at which something that falls with it passes zero; speeds above full ones are allowed. */
function speedWhere(run: Run, falling: () => number): void {
  let [low, high] = [0.02, 8];
  for (let count = 0; count < HALVINGS; count++) {
    const middle = Math.sqrt(low * high);
    run.at(middle);
    if (falling() > 0) low = middle;
    else high = middle;
  }
  run.at(high);
}

function flowOf({ state }: Run): number {
  return state.network.flows[0] as number;
}

/** Mass flow at which the tightest limit just holds [kg/s]. */
function neededFlow(run: Run, duty: Duty): number {
  const limits = askedLimits(run.machine, duty);
  speedWhere(run, () => Math.max(...limits.map(({ found, limit }) => found(run.state) - limit)));
  return flowOf(run);
}

function lossOf({ machine, state }: Run): number {
  return machine.legs.reduce((sum, leg: SeriesLeg, index) => {
    const flow = state.network.flows[index] as number;
    return leg.stages.reduce((part, stage, at) => {
      const own = stage.kind === 'bank' ? 0 : leg.stageLoss(at, flow);
      return part + own + closenessLoss(leg, at, flow);
    }, sum);
  }, 0);
}

function ventsOf({ machine, state }: Run): number {
  const noise = newNoiseState(machine);
  soundEnergy(machine, new Float64Array(machine.banks.length), state, noise);
  const { distance } = machine.plant.enclosure.listener;
  return noise.vents.reduce((sum, value) => sum + value, 0) / distance ** 2;
}

/**
 * Tables of an airway that is one path, its only choice the fans of its banks, all of them alike in size, so that what
 * the path loses depends on which banks are filled and not on with what.
 *
 * @param enclosure the scenario
 */
export function pathTable(enclosure: Enclosure): PathTable {
  const plant = plantOf(enclosure);
  const places = enclosure.places.flatMap((place, index) => (place.kind === 'bank' ? [index] : []));
  const filled = Array.from({ length: 2 ** places.length - 1 }, (_, index) => index + 1);
  const first = (place: number): number =>
    (enclosure.places[place] as BankPlace).options.findIndex((bank) => bank !== null);
  const empty = (place: number): number => (enclosure.places[place] as BankPlace).options.indexOf(null);
  const buildWith = (set: number): number[] =>
    enclosure.places.map((_, place) => {
      const bank = places.indexOf(place);
      if (bank < 0) return 0;
      return set & (1 << bank) ? first(place) : empty(place);
    });
  const runs = enclosure.duties.map((duty) => filled.map((set) => runOf(plant, buildWith(set), duty)));
  const needed = enclosure.duties.map((duty, index) => neededFlow(runs[index]?.[0] as Run, duty));

  const tables = new Map<string, BankTable[][]>();
  const losses = enclosure.duties.map((): number[][] => []);
  const vents = enclosure.duties.map((): number[][] => []);
  enclosure.duties.forEach((_, duty) => {
    filled.forEach((set, index) => {
      const run = runs[duty]?.[index] as Run;
      losses[duty]?.push([]);
      vents[duty]?.push([]);
      for (const [step, factor] of FLOWS.entries()) {
        const flow = factor * (needed[duty] as number);
        speedWhere(run, () => flow - flowOf(run));
        losses[duty]?.[index]?.push(lossOf(run));
        vents[duty]?.[index]?.push(ventsOf(run));
        for (const { place, leg, stage } of run.machine.banks) {
          const density = run.machine.legs[leg]?.densities[stage] as number;
          (enclosure.places[place] as BankPlace).options.forEach((bank, option) => {
            if (bank === null) return;
            const machine = assemble(plant, buildWith(set).with(place, option));
            const placed = machine.banks.find((one) => one.place === place) as MachineBank;
            const its = machine.legs[leg]?.stages[stage];
            const derating = its?.kind === 'bank' ? its.derating : 1;
            const key = `${places.indexOf(place)} ${option} ${set}`;
            const own = tables.get(key) ?? enclosure.duties.map(() => []);
            tables.set(key, own);
            (own[duty] as BankTable[])[step] = bankTable(enclosure, placed, derating, flow, density);
          });
        }
      }
    });
  });
  return {
    filled,
    flows: FLOWS.length,
    speeds: SPEEDS,
    losses,
    vents,
    options: [...tables].map(([key, own]) => {
      const [bank = 0, option = 0, set = 0] = key.split(' ').map(Number);
      return { bank, option, filled: set, tables: own };
    }),
  };
}
