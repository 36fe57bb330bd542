import type { Front } from '../../search/front/front.ts';
import type { FrontAxis } from '../../search/front/front-axis.ts';
import { atMost, count, quantity } from '../figures.ts';
import { printable } from '../printable.ts';
import { wrapped } from '../prose.ts';
import type { RankRow } from '../rank-columns.ts';
import { rankTable } from '../rank-table.ts';
import type { Drawing } from '../table.ts';
import { rankedDuty, rankedFigure } from './ranked-figure.ts';

const steps: Readonly<Record<FrontAxis, string>> = {
  price: 'Each row is the quietest build that is cheaper than the one above it.',
  depth: 'Each row is the quietest build that is less deep than the one above it.',
  margin: 'Each row is the quietest build with more margin than the one above it',
};

const worse: Readonly<Record<FrontAxis, string>> = {
  price: 'and no dearer',
  depth: 'and no deeper',
  margin: 'with no less margin',
};

function rowsOf({ rows, against, by }: Front): readonly RankRow[] {
  return rows.flatMap(({ outcome }, index) => {
    const duty = rankedDuty(outcome, by);
    const ranked = rankedFigure(outcome, against === 'depth' ? { goal: 'depth' } : by);
    return duty ? [{ mark: `${index + 1}`, outcome, duty, ...(ranked ? { ranked } : {}) }] : [];
  });
}

function endWords({ complete, stopped, rows, against }: Front): string {
  if (rows.length === 0) {
    if (complete) return 'No build is adequate and does what is asked.';
    return stopped ? 'Stopped before the end: nothing was found so far.' : 'Nothing was found.';
  }
  if (stopped) return 'Stopped before the end: it may go on beyond the last row.';
  if (!complete) return 'It goes on beyond the last row.';
  const beyond = { price: 'cheaper', depth: 'less deep', margin: 'with more margin' }[against];
  return against === 'margin'
    ? 'No adequate build has a step more margin than the last row.'
    : `No adequate build is ${beyond} than the last row.`;
}

/**
 * How noise trades against something else, as text: one row a build, quietest first.
 *
 * @param front rows and what they prove
 * @param drawing width and paint
 * @returns lines that end with a line break
 */
export function frontView(front: Front, drawing: Drawing): string {
  const { title, against, rows, gap, step, space, searches } = front;
  const { width, paint } = drawing;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const by = against === 'margin' ? ` by ${quantity('kelvins', step)} at least.` : '';
  const proof = `No build is quieter than a row by more than ${atMost(gap)} dB ${worse[against]}.`;
  const spaced = `${count(searches)} ${searches === 1 ? 'search' : 'searches'} of ${count(space)} builds.`;
  const where = front.by?.duty === undefined ? '' : ` in ${printable(front.by.duty)}`;
  const lines = [
    ...say(`${printable(title)}: noise${where} against ${against}`).map(paint.strong),
    '',
    ...(rows.length > 0 ? [...rankTable(rowsOf(front), drawing), ''] : []),
    ...(rows.length > 0 ? say(`${steps[against]}${by} ${proof}`) : []),
    ...say(`${endWords(front)} ${spaced}`),
  ];
  return `${lines.join('\n')}\n`;
}
