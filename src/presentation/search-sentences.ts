import { isByLevel } from '../search/asks/goal.ts';
import { ASK_REASONS } from '../search/asks/reasons.ts';
import type { NearestMiss, RankedBy, Ranking, SearchCount } from '../search/ranking.ts';
import { lessThanListed } from './asks/goal-words.ts';
import { atMost, count, quantity } from './figures.ts';
import { limited } from './standing-out.ts';

/** Margin below which none counts as asked for [K]: half of what is shown. */
const SHOWN_MARGIN = 0.05;

/**
 * What the search has looked at, and what it proves.
 *
 * @param ranking answer of the search
 * @returns sentences, one a paragraph
 */
export function searchSentences(ranking: Ranking): readonly string[] {
  const { count: counted, complete } = ranking;
  const space = `${builds(counted.space)} in the space: ${count(counted.solved)} solved, ${ruledOut(counted)}`;
  const looked = complete ? space : `${space}, ${count(counted.open)} not looked at`;
  return [`${looked}.`, ...proof(ranking)];
}

/**
 * How near the build that comes closest is, in words.
 *
 * @param miss the nearest miss
 */
export function missSentences(miss: NearestMiss): readonly string[] {
  const { outcome, duty, over, part, reason } = miss;
  const limit = limitOf(miss);
  const what = limited(miss);
  const allowed = limit ? ` of ${quantity('temperature', limit.limit)}` : '';
  const asked = limit && over + limit.margin > SHOWN_MARGIN ? over + limit.margin : 0;
  const margin = asked > 0 ? ` (the asked margin of ${quantity('kelvins', asked)} included)` : '';
  const { arrangement } = outcome.build;
  if (reason !== undefined) return [`Nearest miss: in ${duty}, ${part} fails: ${reason}.`];
  return [
    `Nearest miss: in ${duty}, ${what} is ${quantity('kelvins', over)} over its limit${allowed}${margin}.`,
    ...(arrangement === '' ? [] : [`The build: ${arrangement}.`]),
  ];
}

function limitOf({ outcome, duty, part, of }: NearestMiss) {
  const limits = outcome.duties
    .find((candidate) => candidate.duty === duty)
    ?.parts.find((candidate) => candidate.part === part)
    ?.limits.filter((limit) => limit.of === of);
  return limits?.toSorted((one, other) => one.margin - other.margin)[0];
}

function builds(number: number): string {
  return number === 1 ? '1 build' : `${count(number)} builds`;
}

function ruledOut(counted: SearchCount): string {
  const reasons = counted.ruledOut.filter((reason) => reason.builds > 0);
  const total = reasons.reduce((sum, reason) => sum + reason.builds, 0);
  const each = reasons.map(({ bound, builds: number }) => `${count(number)} ${bound}`).join(', ');
  return reasons.length === 0 ? 'none ruled out' : `${count(total)} ruled out (${each})`;
}

/** Rows stand in the order of their ties, so the noisiest need not be the last. */
function proof({ count: counted, rows: listed, complete, asked, by }: Ranking): readonly string[] {
  const rows = listed.length;
  const more = isMoreAsked(counted);
  const unknown = 'Stopped before the end: an adequate build may be among those not looked at.';
  if (rows === 0) return complete ? [] : [unknown];
  if (complete && rows < asked) {
    return [more ? 'No other build is adequate and does what is asked.' : 'No other build is adequate.'];
  }
  if (complete && by && !isByLevel(by.goal)) return [costProof(by, rows, more)];
  const reference = rows === 1 ? 'this one' : 'the noisiest row';
  const proved = Number.isFinite(counted.gap)
    ? `No build left out${more ? ' that does what is asked' : ''} is quieter than ${reference} by more than ${atMost(counted.gap)} dB.`
    : 'Nothing is proved about the builds not looked at.';
  return [complete ? proved : `Stopped before the end: this is the best so far. ${proved}`];
}

/** What a list by cost proves; of power only as far as the speeds found take the least. */
function costProof(by: RankedBy, rows: number, more: boolean): string {
  const asked = more ? ' that is adequate and does what is asked' : ' that is adequate';
  return `No build left out${asked} ${lessThanListed(by)} than ${rows === 1 ? 'this one' : 'the last row'}.`;
}

/** Whether builds were put out that may well be adequate, because something else is asked. */
export function isMoreAsked({ ruledOut }: SearchCount): boolean {
  const asked: readonly string[] = ASK_REASONS.filter((reason) => reason !== 'beyond the end of the list');
  return ruledOut.some(({ bound, builds: number }) => number > 0 && asked.includes(bound));
}
