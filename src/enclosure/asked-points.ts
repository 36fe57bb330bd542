import type { Asks } from './asks.ts';
import type { BankOutcome, FailureOutcome } from './outcome.ts';

/**
 * Banks whose working points are not as asked.
 *
 * @param banks at their working points
 * @param asks what is asked; nothing if absent
 */
export function pointFailures(
  banks: readonly BankOutcome[],
  asks: Asks | undefined,
): readonly FailureOutcome[] {
  if (!asks) return [];
  return banks.flatMap(({ place, stalled, backflow }) => [
    ...(asks.noStall && stalled
      ? [{ part: place, reason: 'it runs stalled, which is asked never to happen' }]
      : []),
    ...(asks.noBackFlow && backflow
      ? [{ part: place, reason: 'air runs backwards through it, which is asked never to happen' }]
      : []),
  ]);
}
