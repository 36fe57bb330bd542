import { densityAt } from '../air/air.ts';
import type { SeriesLeg } from '../airway/series.ts';
import { closenessLoss } from '../airway/stage-flow.ts';
import { closenessIn } from './closeness.ts';
import type { Leg } from './enclosure.ts';
import type { BudgetLine, LegOutcome } from './outcome.ts';
import { enteringTemperature, isForward, placeId, type SolvedPass } from './solved-pass.ts';

/** What the stages of a leg lose by themselves, then what they lose because things stand close, then its height. */
function pressureLines({ machine }: SolvedPass, leg: Leg, index: number, flow: number): BudgetLine[] {
  const series = machine.legs[index] as SeriesLeg;
  const closeness = closenessIn(machine.plant.enclosure, machine.build, leg);
  const lines = leg.through.flatMap((place, stage): BudgetLine[] => {
    const label = placeId(machine, place);
    const own = { label, amount: series.stageLoss(stage, flow) };
    const amount = closenessLoss(series, stage, flow);
    if (amount === 0) return [own];
    const close = closeness[stage];
    const why = close ? `only the part that ${placeId(machine, close.bank)} reaches` : 'wall close by';
    return [own, { label: `${label}: ${why}`, amount }];
  });
  return leg.rise ? [...lines, { label: 'weight of the air', amount: -series.lift }] : lines;
}

/** Flow and pressure budget of a leg. */
export function legOutcome(solved: SolvedPass, leg: Leg, index: number): LegOutcome {
  const { machine, state, conditions } = solved;
  const massFlow = state.network.flows[index] as number;
  const entering = enteringTemperature(solved, leg, index);
  const names = machine.plant.enclosure.chambers;
  return {
    leg: leg.id,
    from: names[leg.from] ?? '',
    to: names[leg.to] ?? '',
    massFlow,
    flow: massFlow / densityAt(conditions.site, entering),
    pressureDifference:
      (state.network.pressures[leg.from] as number) - (state.network.pressures[leg.to] as number),
    pressures: pressureLines(solved, leg, index, massFlow),
    reversed: !isForward(solved, index),
  };
}
