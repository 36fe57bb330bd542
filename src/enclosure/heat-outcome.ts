import { shareAhead, streamAlong, streamBack } from '../heat/stagnant-air.ts';
import type { KelvinDifference, KilogramsPerSecond, Watts } from '../quantities/dimensions.ts';
import { type Leg, OUTSIDE, type Part } from './enclosure.ts';
import type { DutyOutcome } from './outcome.ts';
import { panelOutcomes } from './panel-outcome.ts';
import {
  chamberTemperature,
  enteringTemperature,
  isForward,
  placeId,
  type SolvedPass,
} from './solved-pass.ts';

function isOutside({ seat }: Part): boolean {
  return seat.kind === 'chamber' && seat.chamber === OUTSIDE;
}

/** What passes between the box and the room. */
interface Exchange {
  /** Heat carried out less what is brought in [W]. */
  carried: Watts;
  /** [kg/s] */
  entering: KilogramsPerSecond;
  /** [kg/s] */
  leaving: KilogramsPerSecond;
  /** Sum over all that leaves of its flow and kelvins above the room [kg·K/s]. */
  warmth: number;
}

/** Counts air that leaves the box, or enters it if the flow is negative, so many kelvin above the room. */
function count(exchange: Exchange, flow: KilogramsPerSecond, above: KelvinDifference, cp: number): void {
  exchange.carried += flow * cp * above;
  if (flow < 0) exchange.entering -= flow;
  else {
    exchange.leaving += flow;
    exchange.warmth += flow * above;
  }
}

/** Adds what passes the ends of a leg that lie outside. */
function addLeg(exchange: Exchange, solved: SolvedPass, leg: Leg, index: number): void {
  const { state, conditions } = solved;
  const { room, specificHeat } = conditions;
  const flow = state.network.flows[index] as number;
  const forward = isForward(solved, index);
  const [source, target] = forward ? [leg.from, leg.to] : [leg.to, leg.from];
  const start = enteringTemperature(solved, leg, index);
  const warmed = (state.stageHeat[index] as Float64Array).reduce((sum, watts) => sum + watts, 0);
  const along = streamAlong(flow);
  const back = streamBack(flow);
  const ahead = shareAhead(flow);
  if (target === OUTSIDE) {
    count(exchange, along, start - room + (ahead * warmed) / (along * specificHeat), specificHeat);
    if (back > 0) count(exchange, -back, 0, specificHeat);
  }
  if (source === OUTSIDE) {
    count(exchange, -along, start - room, specificHeat);
    exchange.carried += (1 - ahead) * warmed;
    if (back > 0) count(exchange, back, chamberTemperature(solved, target) - room, specificHeat);
  }
}

/** Heat in, and what the air carries out of the box. */
export function heatBudget(
  solved: SolvedPass,
): Pick<DutyOutcome, 'heat' | 'heatCarried' | 'throughFlow' | 'exhaustTemperature'> {
  const { machine, state, conditions } = solved;
  const { enclosure } = machine.plant;
  const heat = [
    ...enclosure.parts.flatMap((part, index) =>
      isOutside(part) ? [] : [{ label: part.id, amount: state.partPowers[index] as number }],
    ),
    ...machine.banks.map((bank, index) => ({
      label: `fans ${placeId(machine, bank.place)}`,
      amount: state.fanPowers[index] as number,
    })),
    ...panelOutcomes(solved).map(({ chamber, heat: lost }) => ({
      label: `through the wall of ${chamber}`,
      amount: -lost,
    })),
  ];
  const flows = { carried: 0, entering: 0, leaving: 0, warmth: 0 };
  enclosure.legs.forEach((leg, index) => {
    addLeg(flows, solved, leg, index);
  });
  return {
    heat,
    heatCarried: flows.carried,
    throughFlow: flows.entering,
    exhaustTemperature: conditions.room + (flows.leaving > 0 ? flows.warmth / flows.leaving : 0),
  };
}
