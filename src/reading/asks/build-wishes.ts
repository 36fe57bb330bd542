import type { Enclosure } from '../../enclosure/enclosure.ts';
import type { Findings, WrittenMap } from '../findings.ts';
import { valueAt } from '../form-tree.ts';
import { type AskContext, readAsks } from './asks.ts';
import { readHeaders } from './headers.ts';

/**
 * Reads what is asked of builds beside their limits, and which of their banks are fed together.
 *
 * @param written the whole scenario
 * @param context what it refers to
 * @param findings receives what is wrong
 */
export function readBuildWishes(
  written: WrittenMap,
  context: AskContext,
  findings: Findings,
): Pick<Enclosure, 'asks' | 'headers'> {
  const asks = readAsks(valueAt(written, ['ask']), context, findings);
  const headers = readHeaders(valueAt(written, ['headers']), context, findings);
  return { ...(asks ? { asks } : {}), ...(headers.length > 0 ? { headers } : {}) };
}
