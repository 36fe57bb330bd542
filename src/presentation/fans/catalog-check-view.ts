import type { Problem } from '../../reading/problem.ts';
import { type Document, documentOf, type Meta } from '../document.ts';
import { doubtView } from '../doubts.ts';
import { count } from '../figures.ts';
import type { Paint } from '../paint.ts';
import { printable } from '../printable.ts';

/** How much a catalog holds [-]. */
export interface CatalogHolds {
  readonly fans: number;
  readonly stock: number;
}

/**
 * What a catalog without problems holds, and what is odd about it.
 *
 * @param holds how much
 * @param doubts what is odd
 * @param options name of the file and paint
 */
export function catalogCheckView(
  { fans, stock }: CatalogHolds,
  doubts: readonly Problem[],
  { file, paint }: { readonly file: string; readonly paint: Paint },
): string {
  const parts = [
    fans > 0 ? `${count(fans)} ${fans === 1 ? 'fan' : 'fans'}` : '',
    stock > 0 ? `${count(stock)} ${stock === 1 ? 'item' : 'items'} of stock` : '',
  ].filter((part) => part !== '');
  const told = `${paint.good('no problems')} in ${printable(file)}: ${parts.join(', ')}\n`;
  return doubts.length > 0 ? `${doubtView(doubts, paint)}\n${told}` : told;
}

/**
 * The same as a document.
 *
 * @param holds how much
 * @param meta version, command and warnings
 */
export function catalogCheckDocument({ fans, stock }: CatalogHolds, meta: Meta): Document {
  return documentOf({ fanCount: fans, stockCount: stock, problems: [] }, meta);
}
