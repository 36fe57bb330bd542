import type { Machine } from '../enclosure/machine.ts';
import { placeId } from '../enclosure/solved-pass.ts';

/** One independent part of what is off about the fans of a build. */
export interface CommonPart {
  readonly key: string;
  /** Share of it in what is off about each bank, in standard deviations [-]; order of the banks. */
  readonly weights: readonly number[];
}

/**
 * Takes what may be off about fans apart into independent parts: what all fans have in common, what fans of one model
 * have in common, and what is left to each, of which n fans side by side have 1/√n. Their squares sum to one for a
 * bank of one fan, and two fans are off together as the assumed correlations say. A bank of which all fans are dead has
 * nothing of its own.
 *
 * Source: factor form of a correlation matrix with two levels, derived.
 *
 * @param machine the build
 * @param what is off, for the keys
 */
export function commonParts(machine: Machine, what: string): readonly CommonPart[] {
  const { banks, plant } = machine;
  const { sameModel, otherModel } = plant.enclosure.assumptions.sound.correlation;
  const among = Math.min(1, Math.max(0, otherModel));
  const within = Math.min(1, Math.max(among, sameModel));
  const models = [...new Set(banks.map(({ bank }) => bank.fan.id))];
  const turning = banks.filter(({ bank }) => bank.count > 0);
  const parts = [
    { key: `${what} of all fans`, weights: banks.map(() => Math.sqrt(among)) },
    ...models.map((id) => ({
      key: `${what} of ${id}`,
      weights: banks.map(({ bank }) => (bank.fan.id === id ? Math.sqrt(within - among) : 0)),
    })),
    ...turning.map((own) => ({
      key: `${what} of ${own.bank.fan.id} in ${placeId(machine, own.place)}`,
      weights: banks.map((bank) => (bank === own ? Math.sqrt((1 - within) / own.bank.count) : 0)),
    })),
  ];
  return parts.filter(({ weights }) => weights.some((weight) => weight > 0));
}
