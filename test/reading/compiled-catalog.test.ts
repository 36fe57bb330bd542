import { describe, expect, it } from 'vitest';
import { compileCatalog, loadCompiled } from '../../src/reading/compiled-catalog.ts';
import { shippedFans } from '../scenarios/shipped.ts';

describe('a compiled catalog', () => {
  it('gives back every fan as it was read, curves to the last bit', () => {
    expect(loadCompiled(compileCatalog(shippedFans, 'one'), 'one')).toEqual(shippedFans);
  });

  it('is not used for other files than those it was made from', () => {
    expect(loadCompiled(compileCatalog(shippedFans.slice(0, 2), 'one'), 'two')).toBeUndefined();
  });
});
