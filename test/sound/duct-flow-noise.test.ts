import { describe, expect, it } from 'vitest';
import { ductFlowPower, ductFlowPowerWeighted } from '../../src/sound/duct-flow-noise.ts';

describe('flow noise of a straight duct', () => {
  it('reproduces a printed example', () => {
    // Published: phonometry, printed example of a duct, 12 m/s and 0.04 m²: 47.0 dB; digits computed.
    expect(Math.abs(ductFlowPower(0.04, 12) - 47.0)).toBeLessThan(0.05);
    expect(ductFlowPower(0.04, 12)).toBeCloseTo(46.9797, 4);
  });

  it('is negligible at 5 m/s in 60 mm', () => {
    expect(ductFlowPowerWeighted((Math.PI / 4) * 0.06 ** 2, 5)).toBeCloseTo(-1.5582, 3); // computed
  });
});
