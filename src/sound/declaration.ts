import type { Decibels } from '../quantities/dimensions.ts';

/**
 * One-sided 95 % factor of a normal distribution as the standard rounds it [-].
 * Source: ISO 4871 (published: phonometry, declaration.py).
 */
const ONE_SIDED = 1.645;

/**
 * Allowance K that turns a measured into a declared value [dB]: 1.645 √(σR² + σP²).
 *
 * Source: ISO 4871 (published: phonometry, declaration.py).
 *
 * @param reproducibility standard deviation of reproducibility [dB], ≥ 0; 1.5 in the engineering grade
 * @param production standard deviation of production [dB], ≥ 0
 */
export function declarationAllowance(reproducibility: Decibels, production: Decibels = 0): Decibels {
  return ONE_SIDED * Math.hypot(reproducibility, production);
}

/**
 * Allowance K on the mean of a batch [dB]: 1.514 σt + 0.564 (σM - σt).
 *
 * Source: ISO 7574-4 (from memory).
 *
 * @param total total standard deviation σt [dB], ≥ 0
 * @param reference reference standard deviation σM [dB], ≥ 0
 */
export function batchAllowance(total: Decibels, reference: Decibels): Decibels {
  return 1.514 * total + 0.564 * (reference - total);
}
