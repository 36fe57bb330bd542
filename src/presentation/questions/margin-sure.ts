import type { MarginCell, MarginMatrix } from '../../questions/margin/margin.ts';
import { percentOf, probability } from '../bands/band-words.ts';
import type { Cell } from '../column.ts';
import { figure, NONE, unitOf } from '../figures.ts';

/** How likely all limits hold, in whole percent; nothing short of certain is shown as certain. */
export function holdingCell({ sure }: MarginCell): Cell {
  return sure ? percentOf(sure.holding) : NONE;
}

function end(value: number): string {
  return Number.isFinite(value) ? figure('kelvins', value) : NONE;
}

/** How sure the worst is, in a sentence; nothing where that cannot be told. */
export function sureWords({ cells, worst }: MarginMatrix): readonly string[] {
  const sure = cells[worst]?.sure;
  if (!sure) return [];
  const { margin, holding } = sure;
  const unit = unitOf('kelvins').name;
  return [
    `There, nine times in ten a margin of ${end(margin.low)} to ${end(margin.high)} ${unit}, limits hold: ${probability(holding)}.`,
  ];
}
