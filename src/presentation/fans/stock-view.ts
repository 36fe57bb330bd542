import type { StockItem } from '../../reading/stock/stock-item.ts';
import { numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { figure } from '../figures.ts';
import type { Paint } from '../paint.ts';
import { wrapped } from '../prose.ts';
import { table } from '../table.ts';

/** Fields as they would be written between braces. */
function fieldWords({ fields }: StockItem): string {
  return Object.entries(fields)
    .map(([key, value]) => `${key} ${String(value)}`)
    .join(', ');
}

/**
 * Stock as text: what each item settles, how open it is, and where the figures come from.
 *
 * @param stock in the order of the files
 * @param drawing width of the terminal, if there is one, and paint
 */
export function stockView(
  stock: readonly StockItem[],
  drawing: { readonly width?: number | undefined; readonly paint: Paint },
): string {
  const columns = [
    textColumn('Item', KEEP + 3, stock, ({ id }) => id),
    textColumn('Kind', KEEP + 2, stock, ({ kind }) => kind),
    numberColumn('Open', '%', KEEP + 1, stock, ({ openArea }) =>
      openArea === undefined ? '' : figure('percent', openArea),
    ),
    textColumn('Settles', KEEP, stock, fieldWords),
  ];
  const sources = [...new Set(stock.map(({ source }) => source))];
  const told = sources.flatMap((source) => {
    const kinds = new Set(stock.filter((item) => item.source === source).map(({ kind }) => kind));
    return wrapped(`Source of ${[...kinds].join(', ')}: ${source}.`, drawing.width);
  });
  return `${[...(stock.length > 0 ? [...table(columns, drawing), ''] : ['no stock']), ...told].join('\n')}\n`;
}

function itemData({ id, kind, fields, openArea, source }: StockItem): Json {
  const settles = Object.entries(fields).map(([key, value]) => `${key}: ${String(value)}`);
  return { item: id, kind, openArea: openArea ?? null, settles, source };
}

/**
 * The same as a document.
 *
 * @param stock in the order of the files
 * @param meta version, command and warnings
 */
export function stockDocument(stock: readonly StockItem[], meta: Meta): Document {
  return documentOf({ stock: stock.map(itemData) }, meta);
}
