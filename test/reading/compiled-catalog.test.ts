import { describe, expect, it } from 'vitest';
import { compileCatalog, loadCompiled } from '../../src/reading/compiled-catalog.ts';
import { shippedFans, shippedStock } from '../scenarios/shipped.ts';

describe('a compiled catalog', () => {
  it('gives back everything as it was read, curves to the last bit', () => {
    const catalog = { fans: shippedFans, stock: shippedStock };
    expect(shippedStock.length).toBeGreaterThan(60);
    expect(loadCompiled(compileCatalog(catalog, 'one'), 'one')).toEqual(catalog);
  });

  it('is not used for other files than those it was made from', () => {
    expect(
      loadCompiled(compileCatalog({ fans: shippedFans.slice(0, 2), stock: [] }, 'one'), 'two'),
    ).toBeUndefined();
  });
});
