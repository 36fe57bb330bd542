import type { NextChange, WhatNext } from '../../questions/what-next.ts';
import type { WouldDo } from '../../questions/would-do.ts';
import type { Json } from '../document.ts';
import { kelvinData } from '../tellable.ts';

function changeData(change: NextChange): Json {
  return {
    lever: change.lever,
    at: change.at,
    what: change.what,
    notes: change.notes,
    effort: change.effort,
    eases: change.eases,
    adequate: change.adequate,
    level_dBA: change.level,
    quieter_dB: change.quieter ?? null,
    cooler_K: kelvinData(change.cooler),
    price: change.price ?? null,
    power_W: change.power,
    depth_m: change.depth,
  };
}

/**
 * What to change next as data.
 *
 * @param next changes, best first; `null` if nothing was tried
 */
export function nextData(next: WhatNext | undefined): Json {
  if (!next) return null;
  const { changes, tried, flowShare, fansHeldBack } = next;
  return { changes: changes.map(changeData), tried, flowShare: flowShare ?? null, fansHeldBack };
}

/**
 * The cheapest single change that would do, as data.
 *
 * @param found what was looked for; `null` if nothing was
 */
export function wouldDoData(found: WouldDo | undefined): Json {
  return found ? { change: found.change ? changeData(found.change) : null, tried: found.tried } : null;
}
