import type { BuildState } from '../../questions/build-state.ts';
import type { OperatingState, TightLimit } from '../../questions/operating-state.ts';
import type { Json } from '../document.ts';
import { kelvinData, temperatureData } from '../tellable.ts';

/** The tightest limit as data; null if there is none. */
function limitData(tightest: TightLimit | undefined): Json {
  if (!tightest) return null;
  const { subject, of, limit, found, margin } = tightest;
  return { part: subject, of, limit_K: limit, found_K: temperatureData(found), margin_K: kelvinData(margin) };
}

/** A number, or null where there is none. */
export function orNull(value: number | undefined): number | null {
  return value !== undefined && Number.isFinite(value) ? value : null;
}

/** A build in one duty as data. */
export function operatingData(state: OperatingState): { readonly [key: string]: Json } {
  return {
    duty: state.duty,
    adequate: state.adequate,
    level_dBA: orNull(state.level),
    tightest: limitData(state.tightest),
    flow_m3_s: orNull(state.flow),
    fanPower_W: orNull(state.fanPower),
    ratios: state.ratios,
    failure: state.failure ?? null,
  };
}

/** A build in all duties as data. */
export function stateData(state: BuildState): { readonly [key: string]: Json } {
  return {
    adequate: state.adequate,
    level_dBA: orNull(state.level),
    loudest_dBA: orNull(state.loudest),
    tightest: state.tightest
      ? { duty: state.tightest.duty, ...(limitData(state.tightest) as { readonly [key: string]: Json }) }
      : null,
    fanPower_W: orNull(state.fanPower),
    duties: state.duties.map(operatingData),
  };
}
