import type { Header } from '../../enclosure/asks.ts';
import { currentOf, legDepth, modelsOf, priceOf, ratedPowerOf } from '../../enclosure/build-costs.ts';
import type { Build, Enclosure } from '../../enclosure/enclosure.ts';
import type { Machine } from '../../enclosure/machine.ts';
import { worstDeadFan } from '../asks/dead-fan.ts';
import type { AskReason } from '../asks/reasons.ts';
import { tonePointsOf } from '../asks/tone-ask.ts';

/** Something that is asked of a build and not so. */
export interface BrokenAsk {
  readonly reason: AskReason;
  /** What it is, and what it may be: a price, watts, amperes, a number, metres, decibels, kelvins or points. */
  readonly found: number;
  readonly most: number;
  /** Where: the header, the leg, the place of the dead fan; absent where it is the whole build. */
  readonly at?: string;
}

/** Rounding of sums that should be equal to what is asked [-]. */
const ROUNDING = 1e-9;

function sumsOf(enclosure: Enclosure, build: Build): readonly BrokenAsk[] {
  const { asks = {}, headers = [] } = enclosure;
  const { price, ratedPower, models, depths = [] } = asks;
  const currents = headers.flatMap((header: Header): readonly BrokenAsk[] => {
    if (!header.current) return [];
    const found = currentOf(enclosure, build, header);
    return [
      { reason: 'of more current than a header may give', found, most: header.current.most, at: header.id },
    ];
  });
  const deep = depths.map(
    ({ leg, most }): BrokenAsk => ({
      reason: 'deeper than asked',
      found: legDepth(enclosure, build, leg),
      most,
      at: enclosure.legs[leg]?.id ?? '',
    }),
  );
  const whole: BrokenAsk[] = [];
  const add = (reason: AskReason, found: number, most: number | undefined): void => {
    if (most !== undefined) whole.push({ reason, found, most });
  };
  add('dearer than asked', priceOf(enclosure, build), price);
  add('of more fan power than asked', ratedPowerOf(enclosure, build), ratedPower);
  add('of more models than asked', modelsOf(enclosure, build), models);
  return [...whole, ...currents, ...deep];
}

function deadFanOf(enclosure: Enclosure, build: Build): readonly BrokenAsk[] {
  const worst = enclosure.asks?.deadFan ? worstDeadFan(enclosure, build) : null;
  if (!worst) return [];
  const at = enclosure.places[worst.place]?.id ?? '';
  return [{ reason: 'too warm with a dead fan', found: worst.over, most: 0, at }];
}

/**
 * What is asked of a build and not so, beside its limits.
 *
 * @param machine the build, in an enclosure with what is asked
 * @param speeds of its banks by duty [-]
 * @param level of the kind that counts, at these speeds [dB]; absent if it is not adequate
 */
export function brokenAsks(
  machine: Machine,
  speeds: readonly Float64Array[],
  level: number | undefined,
): readonly BrokenAsk[] {
  const { enclosure } = machine.plant;
  const { asks = {} } = enclosure;
  const found: BrokenAsk[] = [...sumsOf(enclosure, machine.build), ...deadFanOf(enclosure, machine.build)];
  if (level !== undefined && asks.level !== undefined) {
    found.push({ reason: 'louder than asked', found: level, most: asks.level });
  }
  if (level !== undefined && asks.tonePoints !== undefined) {
    found.push({
      reason: 'more tonal than asked',
      found: tonePointsOf(machine, speeds),
      most: asks.tonePoints,
    });
  }
  return found.filter(({ found: value, most }) => value > most + Math.abs(most) * ROUNDING + ROUNDING);
}
