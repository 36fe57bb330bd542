import type { BankRise } from '../fan/mixed-bank.ts';
import type { CubicMetresPerSecond, KilogramsPerSecond, Pascals } from '../quantities/dimensions.ts';
import { evaluateBank } from './bank-stage.ts';
import { elementLoss, type SeriesLeg, type Stage } from './series.ts';

/**
 * What a stage loses beyond its own loss because it and fans, or its fans and walls, stand close [Pa]. An element
 * used in part loses what the whole one would at so much more flow.
 *
 * @param leg refreshed
 * @param index of the stage [-]
 * @param flow mass flow of the leg [kg/s], either sign
 */
export function closenessLoss(leg: SeriesLeg, index: number, flow: KilogramsPerSecond): Pascals {
  const stage = leg.stages[index] as Stage;
  const density = leg.densities[index] as number;
  if (stage.kind === 'bank') return ((stage.walls ?? 0) / density) * flow * Math.abs(flow);
  if (stage.kind === 'empty' || stage.used === undefined) return 0;
  const viscosity = leg.viscosities[index] as number;
  const concentrated = elementLoss(stage.element, flow / (density * stage.used), density, viscosity);
  return concentrated - leg.stageLoss(index, flow);
}

const bankRise: BankRise = { rise: 0, slope: 0, fanFlow: 0 };

/**
 * Volume flow of each turning fan of a bank [m³/s]; 0 if the stage has none.
 *
 * @param leg refreshed
 * @param index of the stage [-]
 * @param flow mass flow of the leg [kg/s], either sign
 */
export function fanFlow(leg: SeriesLeg, index: number, flow: KilogramsPerSecond): CubicMetresPerSecond {
  const stage = leg.stages[index] as Stage;
  if (stage.kind !== 'bank' || stage.count === 0) return 0;
  evaluateBank(stage, flow, leg.ratios[index] as number, leg.densities[index] as number, 1, bankRise);
  return bankRise.fanFlow;
}
