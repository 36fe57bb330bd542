import { densityAt } from '../air/air.ts';
import type { SeriesLeg } from '../airway/series.ts';
import type { Leg } from './enclosure.ts';
import type { LegOutcome } from './outcome.ts';
import { chamberTemperature, enteringTemperature, placeId, type SolvedPass } from './solved-pass.ts';

/** Flow and pressure budget of a leg. */
export function legOutcome(solved: SolvedPass, leg: Leg, index: number): LegOutcome {
  const { machine, state, conditions } = solved;
  const series = machine.legs[index] as SeriesLeg;
  const massFlow = state.network.flows[index] as number;
  const source = massFlow >= 0 ? leg.from : leg.to;
  const entering =
    source === leg.from ? enteringTemperature(solved, leg, index) : chamberTemperature(solved, source);
  const pressures = leg.through.map((place, stage) => ({
    label: placeId(machine, place),
    amount: series.stageLoss(stage, massFlow),
  }));
  const names = machine.plant.enclosure.chambers;
  return {
    leg: leg.id,
    from: names[leg.from] ?? '',
    to: names[leg.to] ?? '',
    massFlow,
    flow: massFlow / densityAt(conditions.site, entering),
    pressureDifference:
      (state.network.pressures[leg.from] as number) - (state.network.pressures[leg.to] as number),
    pressures,
    reversed: massFlow < 0,
  };
}
