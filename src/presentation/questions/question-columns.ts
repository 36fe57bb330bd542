import type { BuildState } from '../../questions/build-state.ts';
import type { OperatingState } from '../../questions/operating-state.ts';
import { type Cell, type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { figure, levelText, NONE } from '../figures.ts';
import { limited } from '../standing-out.ts';

/** A build in all duties, or why there is none. */
export type StateOrReason = BuildState | string;

/** The duty whose flow and speeds are shown: the loudest that takes up any time. */
export function shownDuty({ duties }: BuildState): OperatingState | undefined {
  const lasting = duties.filter(({ share }) => share > 0);
  return (lasting.length > 0 ? lasting : duties).reduce<OperatingState | undefined>(
    (loudest, duty) => (loudest && loudest.level >= duty.level ? loudest : duty),
    undefined,
  );
}

/** A cell of what there is, or a dash. */
function cellOf(state: StateOrReason, cell: (state: BuildState) => Cell): Cell {
  return typeof state === 'string' ? NONE : cell(state);
}

function marginCell({ adequate, tightest }: BuildState): Cell {
  const text = tightest ? figure('kelvins', tightest.margin) : NONE;
  return adequate ? text : { text, tone: 'bad' };
}

function tightestCell(state: StateOrReason): Cell {
  if (typeof state === 'string') return state;
  const { tightest, failure, duties } = state;
  if (failure) return failure;
  if (!tightest) return 'no limit';
  const words = limited({ of: tightest.of, part: tightest.subject });
  return duties.length > 1 ? `${words} in ${tightest.duty}` : words;
}

/** A word that tells without colour whether a build holds its limits. */
function verdictCell(state: StateOrReason): Cell {
  if (typeof state === 'string') return { text: 'none', tone: 'bad' };
  return state.adequate ? { text: 'ok', tone: 'good' } : { text: 'OVER', tone: 'bad' };
}

function speedsCell({ duties }: BuildState, shown: OperatingState | undefined): Cell {
  const duty = shown ?? duties[0];
  return (duty?.ratios ?? []).map((ratio) => figure('percent', ratio)).join(' / ');
}

/**
 * Columns of level, margin, flow, power and speeds, one row a state.
 *
 * @param states in the order of the rows
 * @param beside further columns, that stand before the tightest limit
 */
export function stateColumns(
  states: readonly StateOrReason[],
  beside: readonly Column[] = [],
): readonly Column[] {
  const several = states.some((state) => typeof state !== 'string' && state.duties.length > 1);
  const level = (state: BuildState): Cell => levelText(state.level);
  return [
    numberColumn(several ? 'Mean' : 'Noise', 'dB(A)', KEEP + 4, states, (state) => cellOf(state, level)),
    ...(several
      ? [
          numberColumn('Max', 'dB(A)', 60, states, (state) =>
            cellOf(state, ({ loudest }) => levelText(loudest)),
          ),
        ]
      : []),
    numberColumn('Margin', 'K', KEEP + 4, states, (state) => cellOf(state, marginCell)),
    textColumn('', KEEP + 4, states, verdictCell),
    numberColumn('Flow', 'm³/h', 40, states, (state) =>
      cellOf(state, (each) => figure('flow', shownDuty(each)?.flow ?? Number.NaN)),
    ),
    numberColumn('Power', 'W', 20, states, (state) =>
      cellOf(state, ({ fanPower }) => figure('power', fanPower)),
    ),
    textColumn('Speeds, %', KEEP + 1, states, (state) =>
      cellOf(state, (each) => speedsCell(each, shownDuty(each))),
    ),
    ...beside,
    textColumn('Tightest', 50, states, tightestCell),
  ];
}
