import type { ImportedFans } from '../../reading/shop/import-fans.ts';
import { type Document, documentOf, type Meta } from '../document.ts';
import { doubtView } from '../doubts.ts';
import { count } from '../figures.ts';
import { problemData } from '../json.ts';
import type { Paint } from '../paint.ts';
import { printable } from '../printable.ts';
import { problemView } from '../problem-view.ts';

/**
 * What came of an import, as text: what is wrong with rows, what is odd about them, and how many are kept.
 *
 * @param made the family
 * @param to file it was written to; undefined if to standard output
 * @param paint colours
 */
export function importView(made: ImportedFans, to: string | undefined, paint: Paint): string {
  const { count: kept, problems, doubts } = made;
  const where =
    kept === 0 ? 'nothing is written' : to === undefined ? 'written' : `written to ${printable(to)}`;
  const fans = `${count(kept)} ${kept === 1 ? 'fan' : 'fans'}`;
  const parts = [problemView(problems, { paint }), doubtView(doubts, paint), `${fans} kept, ${where}\n`];
  return parts.filter((part) => part !== '').join('\n');
}

/**
 * The same as a document.
 *
 * @param made the family
 * @param to file it was written to; undefined if to none
 * @param meta version, command and warnings
 */
export function importDocument(
  { count: kept, problems, text }: ImportedFans,
  to: string | undefined,
  meta: Meta,
): Document {
  const written = to === undefined || text === undefined ? null : to;
  return documentOf({ kept, written, catalog: text ?? null, problems: problems.map(problemData) }, meta);
}
