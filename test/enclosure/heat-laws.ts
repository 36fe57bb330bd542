import { probeTemperature } from '../../src/enclosure/asked-limits.ts';
import { heatBudget } from '../../src/enclosure/heat-outcome.ts';
import type { Machine } from '../../src/enclosure/machine.ts';
import { createPass, type PassFailure } from '../../src/enclosure/pass.ts';
import { conditionsOf, newPassState } from '../../src/enclosure/pass-state.ts';
import type { SolvedPass } from '../../src/enclosure/solved-pass.ts';
import { HOPELESS } from '../../src/heat/part-temperature.ts';
import { sumOf } from './dressed.ts';
import { dutyOf } from './hand-made.ts';

/** Where air hardly moves, as much comes back as goes [kg/s]: the model's own figure, repeated on purpose. */
const LEAST = 1e-7;

/** Flow from which on all heat of a leg leaves the way its air runs [kg/s]: the model's own figure, repeated on purpose. */
const SLOW = 5e-5;

/** By how much the laws of conservation and of order are missed in one pass; all of them should be next to nothing. */
export interface Missed {
  /** Most mass that a chamber gains or loses [kg/s]. */
  readonly mass: number;
  /** Heat carried out less heat given, over the heat given [-]; heat that leaves by a missing mass is left out. */
  readonly energy: number;
  /** The same between the lines of the budget that is shown and their sum [-]. */
  readonly budget: number;
  /** Entropy that vanishes in a chamber, over what passes through it [-]. */
  readonly entropy: number;
  /** Kelvins by which a part or its probe is colder than its air, over its temperature [-]. */
  readonly cold: number;
  /** By how much R·ṁ·cp of fins falls short of 1 [-]. */
  readonly floor: number;
}

/** A pass with a judgement of it. */
export interface Judged {
  readonly failure: PassFailure | null;
  /** Hottest air or part [K]. */
  readonly hottest: number;
  readonly missed: Missed;
}

interface Stream {
  readonly source: number;
  readonly target: number;
  readonly flow: number;
  /** At its start, and at its end [K]. */
  readonly start: number;
  readonly end: number;
  /** Heat that leaves at its start [W]. */
  readonly returned: number;
}

/** What passes each leg: the air that runs, and what comes back where it hardly does. */
function streamsOf({ machine, state, conditions }: SolvedPass): readonly Stream[] {
  const exhaust = state.chambers[state.chambers.length - 1] as number;
  return machine.plant.enclosure.legs.flatMap((leg, index): Stream[] => {
    const signed = state.network.flows[index] as number;
    const forward = signed > -LEAST;
    const [source, target] = forward ? [leg.from, leg.to] : [leg.to, leg.from];
    const own = state.chambers[source] as number;
    const start = source === 0 && forward ? own + leg.recirculation * (exhaust - own) : own;
    const flow = Math.max(LEAST, Math.abs(signed));
    const heat = (state.stageHeat[index] as Float64Array).reduce((sum, watts) => sum + watts, 0);
    const back = forward ? flow - signed : 0;
    const other = state.chambers[target] as number;
    const ahead = forward ? Math.min(1, 0.5 + signed / (2 * SLOW)) : Math.min(1, 0.5 - signed / (2 * SLOW));
    const end = start + (ahead * heat) / (flow * conditions.specificHeat);
    return [
      { source, target, flow, start, end, returned: (1 - ahead) * heat },
      ...(back > 0
        ? [{ source: target, target: source, flow: back, start: other, end: other, returned: 0 }]
        : []),
    ];
  });
}

function partHeat({ machine, state }: SolvedPass, chamber?: number): number {
  return machine.plant.enclosure.parts.reduce((sum, { seat }, index) => {
    const there = chamber === undefined || (seat.kind === 'chamber' && seat.chamber === chamber);
    return there ? sum + (state.partPowers[index] as number) : sum;
  }, 0);
}

function wallHeat({ machine, state }: SolvedPass, chamber?: number): number {
  return (machine.plant.enclosure.skins ?? []).reduce((sum, skin) => {
    const above = (state.chambers[skin.chamber] as number) - (state.chambers[0] as number);
    return chamber === undefined || skin.chamber === chamber ? sum + skin.conductance * above : sum;
  }, 0);
}

/** Mass that each chamber gains [kg/s]. */
function gains({ machine, state }: SolvedPass): Float64Array {
  const gained = new Float64Array(machine.plant.topology.chambers);
  machine.plant.enclosure.legs.forEach(({ from, to }, index) => {
    const flow = state.network.flows[index] as number;
    gained[from] = (gained[from] as number) - flow;
    gained[to] = (gained[to] as number) + flow;
  });
  gained[0] = 0;
  return gained;
}

function missedEnergy(solved: SolvedPass, streams: readonly Stream[], gained: Float64Array): number {
  const { state, conditions } = solved;
  const { specificHeat: cp, room } = conditions;
  const carried = streams.reduce((sum, { source, target, flow, start, end, returned }) => {
    const moved = flow * cp * ((target === 0 ? end - room : 0) - (source === 0 ? start - room : 0));
    return sum + moved + (source === 0 ? returned : 0);
  }, 0);
  const kept = gained.reduce(
    (sum, gain, index) => sum + Math.abs(gain) * cp * ((state.chambers[index] as number) - room),
    0,
  );
  const given = partHeat(solved) + sumOf(Array.from(state.fanPowers, (amount) => ({ amount })));
  return Math.max(0, Math.abs(carried - (given - wallHeat(solved))) - kept) / given;
}

/** Second law: Σ ṁ·cp·ln(T/T_in) − Q/T ≥ 0 in each chamber, Q the heat of its parts, and of legs in which air hardly
 * moves, less what leaves by its wall. */
function missedEntropy(solved: SolvedPass, streams: readonly Stream[]): number {
  const cp = solved.conditions.specificHeat;
  let most = 0;
  for (let chamber = 1; chamber < solved.machine.plant.topology.chambers; chamber++) {
    const temperature = solved.state.chambers[chamber] as number;
    const returned = streams.reduce((sum, each) => sum + (each.source === chamber ? each.returned : 0), 0);
    const [given, lost] = [partHeat(solved, chamber) + returned, wallHeat(solved, chamber)];
    let made = (lost - given) / temperature;
    let passing = (Math.abs(lost) + given) / temperature;
    for (const { target, flow, end } of streams) {
      if (target !== chamber) continue;
      made += flow * cp * Math.log(temperature / end);
      passing += flow * cp;
    }
    most = Math.max(most, -made / passing);
  }
  return most;
}

function missedByParts(solved: SolvedPass): Pick<Missed, 'cold' | 'floor'> {
  const { machine, state, conditions } = solved;
  let cold = 0;
  let floor = 0;
  machine.plant.enclosure.parts.forEach((part, index) => {
    const temperature = state.partTemperatures[index] as number;
    const air = state.partAir[index] as number;
    const seat = machine.seats[index];
    if (seat) {
      const flow = Math.max(LEAST, Math.abs(state.network.flows[seat.leg] as number));
      floor = Math.max(floor, 1 - (state.finResistances[index] as number) * flow * conditions.specificHeat);
    }
    if (temperature >= HOPELESS) return;
    const probe = probeTemperature(part, index, state);
    cold = Math.max(cold, (air - temperature) / air, (air - probe) / air, (probe - temperature) / air);
  });
  return { cold, floor };
}

/** Solves a machine in its one duty and judges what comes out. */
export function judge(machine: Machine, ratios: Float64Array): Judged {
  const duty = dutyOf(machine);
  const conditions = conditionsOf(machine.plant.enclosure, duty);
  const state = newPassState(machine);
  const failure = createPass(machine)(conditions, ratios, state, 1e-9);
  const solved: SolvedPass = { machine, duty, conditions, ratios, state };
  const streams = streamsOf(solved);
  const gained = gains(solved);
  const budget = failure ? { heat: [], heatCarried: 0 } : heatBudget(solved);
  const given = budget.heat.reduce((sum, { amount }) => sum + Math.max(0, amount), 0);
  return {
    failure,
    hottest: Math.max(...state.chambers, ...state.partTemperatures),
    missed: {
      mass: Math.max(...gained.map(Math.abs)),
      energy: missedEnergy(solved, streams, gained),
      budget: given > 0 ? Math.abs(sumOf(budget.heat) - budget.heatCarried) / given : 0,
      entropy: missedEntropy(solved, streams),
      ...missedByParts(solved),
    },
  };
}
