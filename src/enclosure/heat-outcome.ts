import { STAGNANT_FLOW } from '../heat/mixing.ts';
import { OUTSIDE, type Part } from './enclosure.ts';
import type { DutyOutcome } from './outcome.ts';
import { panelOutcomes } from './panel-outcome.ts';
import { chamberTemperature, placeId, type SolvedPass } from './solved-pass.ts';

function isOutside({ seat }: Part): boolean {
  return seat.kind === 'chamber' && seat.chamber === OUTSIDE;
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
  let carried = 0;
  let inflow = 0;
  let leaving = 0;
  enclosure.legs.forEach((leg, index) => {
    const flow = state.network.flows[index] as number;
    const magnitude = Math.max(Math.abs(flow), STAGNANT_FLOW);
    const stages = state.stages[index] as Float64Array;
    const warmed = (state.stageHeat[index] as Float64Array).reduce((sum, watts) => sum + watts, 0);
    const start =
      flow >= 0
        ? (stages[0] ?? chamberTemperature(solved, leg.from))
        : (stages.at(-1) ?? chamberTemperature(solved, leg.to));
    const end = start + warmed / (magnitude * conditions.specificHeat);
    if ((flow >= 0 ? leg.to : leg.from) === OUTSIDE) {
      carried += magnitude * conditions.specificHeat * (end - conditions.room);
      leaving += magnitude * end;
    }
    if ((flow >= 0 ? leg.from : leg.to) === OUTSIDE) {
      carried -= magnitude * conditions.specificHeat * (start - conditions.room);
      inflow += magnitude;
    }
  });
  return {
    heat,
    heatCarried: carried,
    throughFlow: inflow,
    exhaustTemperature: inflow > 0 ? leaving / inflow : conditions.room,
  };
}
