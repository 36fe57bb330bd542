import { describe, expect, it } from 'vitest';
import {
  DEFAULT_HOLD_FLOOR,
  DERATING_RANGE,
  FAN_ASSUMPTIONS,
  START_ABOVE_HOLD,
} from '../../src/fan/fan-assumptions.ts';

describe('the assumptions on fans', () => {
  it('stay inside what is plausible', () => {
    // Common practice, no source: fins between two fans help, and no pair beats the sum of its fans.
    const { deratingAcrossFins, deratingDirect } = FAN_ASSUMPTIONS;
    expect(deratingDirect).toBeLessThan(deratingAcrossFins);
    expect(deratingDirect).toBeGreaterThanOrEqual(DERATING_RANGE.low);
    expect(deratingAcrossFins).toBeLessThanOrEqual(DERATING_RANGE.high);
    expect(DEFAULT_HOLD_FLOOR + START_ABOVE_HOLD).toBeLessThan(1);
  });
});
