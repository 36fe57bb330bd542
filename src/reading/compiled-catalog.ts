import { curveFromBox } from '../fan/box-figures.ts';
import { curveFromPoints, type FanCurve } from '../fan/curve.ts';
import type { CurvePoints, FanModel } from '../fan/fan-model.ts';
import type { Catalog } from './catalog-file.ts';
import type { StockItem } from './stock/stock-item.ts';

/** What a curve is made from. */
type CurveSeed =
  | { readonly points: CurvePoints }
  | { readonly box: { readonly freeDelivery: number; readonly shutOff: number } };

type CompiledFan = Omit<FanModel, 'curve'> & { readonly curve: CurveSeed };

/** A catalog that has been read and found good, in a form that loads fast. */
interface CompiledCatalog {
  /** Tells whether the files it was made from are still the same. */
  readonly fingerprint: string;
  readonly fans: readonly CompiledFan[];
  readonly stock: readonly StockItem[];
}

function seedOf({ synthesised, raw, freeDelivery, shutOff }: FanCurve): CurveSeed {
  return synthesised ? { box: { freeDelivery, shutOff } } : { points: raw };
}

function grow(seed: CurveSeed): FanCurve {
  if ('points' in seed) return curveFromPoints(seed.points);
  return curveFromBox(seed.box.freeDelivery, seed.box.shutOff);
}

/**
 * Writes a catalog that was read without a problem in a form that loads fast.
 *
 * @param catalog fans and stock
 * @param fingerprint of the files they come from
 */
export function compileCatalog({ fans, stock }: Catalog, fingerprint: string): string {
  const compiled: CompiledCatalog = {
    fingerprint,
    fans: fans.map((fan) => ({ ...fan, curve: seedOf(fan.curve) })),
    stock,
  };
  return JSON.stringify(compiled);
}

/**
 * Loads a catalog from its compiled form; undefined if it was made from other files.
 *
 * @param text as written by `compileCatalog`
 * @param fingerprint of the files at hand
 */
export function loadCompiled(text: string, fingerprint: string): Catalog | undefined {
  const compiled = JSON.parse(text) as CompiledCatalog;
  if (compiled.fingerprint !== fingerprint) return undefined;
  const fans = compiled.fans.map((fan) => ({ ...fan, curve: grow(fan.curve) }));
  return { fans, stock: compiled.stock };
}
