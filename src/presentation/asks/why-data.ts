import { isFailed } from '../../search/build-outcome.ts';
import type { BrokenAsk } from '../../search/why/broken-asks.ts';
import type { WhyNot } from '../../search/why/why-not.ts';
import type { Json } from '../document.ts';
import { outcomeData } from '../outcome-data.ts';
import { kelvinData } from '../tellable.ts';

function brokenData({ reason, found, most, at }: BrokenAsk): Json {
  const isTold =
    Number.isFinite(found) && (reason !== 'too warm with a dead fan' || kelvinData(found) !== null);
  return { reason, found: isTold ? found : null, most, at: at ?? null };
}

/**
 * Why a build is not the first of the list, as data; null if nobody asked.
 *
 * @param why what was found
 */
export function whyData(why: WhyNot | undefined): Json {
  if (!why) return null;
  const { name, build, row, broken, level, more } = why;
  return {
    build: name,
    row: row ?? null,
    level_dBA: level ?? null,
    broken: broken.map(brokenData),
    more: more
      ? {
          level_dB: more.level,
          price: more.price ?? null,
          fanPower_W: more.fanPower,
          depth_m: more.depth,
          reserve_K: kelvinData(more.reserve),
        }
      : null,
    reason: isFailed(build) ? build.reason : null,
    outcome: isFailed(build) ? null : outcomeData(build),
  };
}
