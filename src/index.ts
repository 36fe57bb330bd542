// The library: pure functions on typed data, SI inside, no files, no console, no clock. Runs in a browser.
export { airAt, humidityRatio, pressureAtAltitude } from './air/air.ts';
export { elementKinds } from './elements/kinds.ts';
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
export { curveFromBox } from './fan/box-figures.ts';
export { curveFromPoints } from './fan/curve.ts';
export type { FanModel } from './fan/fan-model.ts';
export { readCatalogs } from './reading/catalog-file.ts';
export type { Problem } from './reading/problem.ts';
export { readScenario } from './reading/scenario-file.ts';
export { buildOutcome } from './search/build-outcome.ts';
export type { SearchOptions } from './search/hunt.ts';
export { fasterIsCooler } from './search/monotone-airway.ts';
export { rank, rankingOf } from './search/rank.ts';
export type { Ranking } from './search/ranking.ts';
export { beginSearch, type Search } from './search/search.ts';
export { solveBuild } from './search/solve-build.ts';
