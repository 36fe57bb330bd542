import type { Front } from '../../search/front/front.ts';
import type { RankedBy } from '../../search/ranking.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { outcomeData } from '../outcome-data.ts';

/** What a list goes by, as data. */
export function rankedByData({ goal, duty, cap }: RankedBy = { goal: 'mean' }): Json {
  return { goal, duty: duty ?? null, levelCap_dBA: cap ?? null };
}

/**
 * How noise trades against something else, as a document.
 *
 * @param front rows and what they prove
 * @param meta version, command and warnings
 */
export function frontDocument(front: Front, meta: Meta): Document {
  const { title, against, by, complete, stopped, space, searches, gap, rows } = front;
  const result = {
    title,
    against,
    by: rankedByData(by),
    complete,
    stopped,
    space,
    searches,
    gap_dB: gap,
    rows: rows.map(({ outcome, level, value }) => ({
      level_dBA: level,
      price: outcome.build.price ?? null,
      depth_m: outcome.build.depth,
      margin_K: against === 'margin' && Number.isFinite(value) ? value : null,
      outcome: outcomeData(outcome),
    })),
  };
  return documentOf(result, meta);
}
