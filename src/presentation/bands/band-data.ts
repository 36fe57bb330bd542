import type { Band } from '../../bands/band.ts';
import type { BuildBands, DutyBands } from '../../bands/build-bands.ts';
import type { Comparison } from '../../bands/comparison.ts';
import type { RowBands } from '../../bands/outcome-bands.ts';
import type { Json } from '../document.ts';

/** No end of a band where nothing settles. */
function end(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

/** The ends of a band and its middle as data; null where it has no end. */
export function bandData({ low, expected, high }: Band): Json {
  return { low: end(low), expected: end(expected), high: end(high) };
}

function dutyData({ duty, holding, level, fanPower, through, margins, parts, legs }: DutyBands): Json {
  return {
    duty,
    holding,
    level_dBA: bandData(level),
    fanPower_W: bandData(fanPower),
    throughFlow_m3_s: bandData(through),
    limits: margins.map(({ subject, of, margin }) => ({ part: subject, of, margin_K: bandData(margin) })),
    parts: parts.map(({ part, temperature }) => ({ part, temperature_K: bandData(temperature) })),
    legs: legs.map(({ leg, flow }) => ({ leg, flow_m3_s: bandData(flow) })),
  };
}

/**
 * Bands of a build as data: SI, the unit in each key; null if there are none.
 *
 * @param bands of the build
 */
export function bandsData(bands: BuildBands | null | undefined): Json {
  if (!bands) return null;
  return {
    level_dBA: bandData(bands.level),
    loudest_dBA: bandData(bands.loudest),
    fanPower_W: bandData(bands.fanPower),
    holding: bands.holding,
    duties: bands.duties.map(dutyData),
  };
}

function comparisonData(comparison: Comparison | undefined): Json {
  return comparison ? { probability: comparison.probability, verdict: comparison.verdict } : null;
}

/**
 * Bands of a row of a ranking, and how it compares with others, as data.
 *
 * @param row of the ranking; null or undefined if it has none
 */
export function rowBandsData(row: RowBands | null | undefined): { readonly [key: string]: Json } {
  return {
    bands: bandsData(row?.bands),
    firstQuieter: comparisonData(row?.first),
    aboveQuieter: comparisonData(row?.above),
  };
}
