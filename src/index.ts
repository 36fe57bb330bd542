// The library: pure functions on typed data, SI inside, no files, no console, no clock. Runs in a browser.
export { airAt, humidityRatio, pressureAtAltitude } from './air/air.ts';
export type { Band } from './bands/band.ts';
export type { BuildBands, DutyBands } from './bands/build-bands.ts';
export { confidenceDemand } from './bands/confidence.ts';
export { outcomeBands, type RowBands, rankingBands } from './bands/outcome-bands.ts';
export { elementKinds } from './elements/kinds.ts';
export type { Asks, Header } from './enclosure/asks.ts';
export { ASSUMPTIONS, type Assumptions } from './enclosure/assumptions.ts';
export { dutyOutcome } from './enclosure/duty-outcome.ts';
export type {
  Bank,
  BankPlace,
  Build,
  Duty,
  ElementOption,
  ElementPlace,
  Enclosure,
  Leg,
  Limit,
  LostThere,
  NamedBuild,
  Part,
  Place,
  Seat,
} from './enclosure/enclosure.ts';
export { OUTSIDE } from './enclosure/enclosure.ts';
export { withLostFans } from './enclosure/lost-fans.ts';
export { assemble, plantOf } from './enclosure/machine.ts';
export type { BuildOutcome, DutyOutcome } from './enclosure/outcome.ts';
export { UNCERTAINTIES, type Uncertainties } from './enclosure/uncertainties.ts';
export { curveFromBox } from './fan/box-figures.ts';
export { curveFromPoints } from './fan/curve.ts';
export type { FanModel } from './fan/fan-model.ts';
export { readRange, type ValueRange } from './quantities/value-range.ts';
export { type Advice, adviceOn } from './questions/advice.ts';
export { airNeed, airNeedTable, type RoomAir } from './questions/air-need.ts';
export { type Comparison, compare } from './questions/compare/compare.ts';
export { arrangements, fanVariants, namedVariants, type Variant } from './questions/compare/variants.ts';
export { type ControllerTable, controllerTable } from './questions/controller-table.ts';
export type { Situation } from './questions/levers/lever.ts';
export { type MarginMatrix, type MarginOptions, marginMatrix } from './questions/margin/margin.ts';
export { findQuantity, type Quantity } from './questions/quantity.ts';
export { type SupplyAnswer, type SupplyQuestion, supplyCheck } from './questions/supply-check.ts';
export { type Axis, type Sweep, type SweepOptions, sweep } from './questions/sweep.ts';
export type { ScenarioBuild } from './questions/varied-scenario.ts';
export { type VentAnswer, ventAnswer } from './questions/vent/vent.ts';
export { type VentWishes, ventTask } from './questions/vent/vent-wishes.ts';
export { readCatalogs } from './reading/catalog-file.ts';
export type { Problem } from './reading/problem.ts';
export { readScenario } from './reading/scenario-file.ts';
export { type ScenarioSource, writtenTree } from './reading/variants/scenario-source.ts';
export { buildOutcome } from './search/build-outcome.ts';
export { type Front, type FrontOptions, front } from './search/front/front.ts';
export type { SearchOptions } from './search/hunt.ts';
export { fasterIsCooler } from './search/monotone-airway.ts';
export { rank, rankingOf } from './search/rank.ts';
export type { Ranking } from './search/ranking.ts';
export { beginSearch, type Search } from './search/search.ts';
export { solveBuild } from './search/solve-build.ts';
export { type WhyNot, whyNot } from './search/why/why-not.ts';
