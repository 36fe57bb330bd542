import type { WrittenMap } from '../findings.ts';

/** The key by which an element names an item of stock. */
export const STOCK_KEY = 'stock';

/** Something that is sold ready-made: a perforation, a mesh, a foam, a fin stack. */
export interface StockItem {
  readonly id: string;
  /** Key of the kind of element it is. */
  readonly kind: string;
  /** Fields of that kind which it settles, as they would be written in a scenario. */
  readonly fields: WrittenMap;
  /** Share of its face that is open, as listed [-]; absent if nothing is listed. */
  readonly openArea?: number;
  /** Where its figures come from. */
  readonly source: string;
}
