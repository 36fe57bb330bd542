import type { DutySetting } from '../../questions/controller-table.ts';
import { levels, probability } from '../bands/band-words.ts';
import { type Column, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { NONE } from '../figures.ts';

/** How sure the fixed speeds are; a dash where nothing can be told. */
export function sureColumns(duties: readonly DutySetting[]): readonly Column[] {
  return [
    textColumn('Duty', KEEP + 9, duties, ({ duty }) => duty),
    textColumn('Nine times in ten', KEEP + 5, duties, ({ bands }) => (bands ? levels(bands.level) : NONE)),
    textColumn('Limits hold', KEEP + 5, duties, ({ bands }) =>
      bands && bands.margins.length > 0 ? probability(bands.holding) : NONE,
    ),
  ];
}
