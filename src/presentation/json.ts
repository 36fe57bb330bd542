import type { BuildBands } from '../bands/build-bands.ts';
import type { Enclosure, Limit, Part, Place } from '../enclosure/enclosure.ts';
import type { BuildOutcome } from '../enclosure/outcome.ts';
import type { WhatNext } from '../questions/what-next.ts';
import type { WouldDo } from '../questions/would-do.ts';
import type { Problem } from '../reading/problem.ts';
import type { Ranking } from '../search/ranking.ts';
import type { WhyNot } from '../search/why/why-not.ts';
import { rankedByData } from './asks/front-data.ts';
import { whyData } from './asks/why-data.ts';
import { bandsData, rowBandsData } from './bands/band-data.ts';
import { type Document, documentOf, type Json, type Meta } from './document.ts';
import { nextData, wouldDoData } from './next/next-data.ts';
import { outcomeData } from './outcome-data.ts';
import type { RankBands } from './rank-view.ts';
import { kelvinData } from './tellable.ts';

/**
 * A ranking as a document.
 *
 * @param ranking answer of a search
 * @param meta version, command and warnings
 * @param change what would make the nearest miss adequate
 * @param sure bands of the rows, in their order, and the probability that was asked for
 * @param why why a build is not the first; not asked if absent
 */
export function rankDocument(
  { title, complete, count, rows, nearestMiss, by }: Ranking,
  meta: Meta,
  change?: WouldDo,
  sure?: RankBands,
  why?: WhyNot,
): Document {
  const result = {
    title,
    complete,
    by: rankedByData(by),
    confidence: sure?.confidence ?? null,
    count: {
      space: count.space,
      solved: count.solved,
      ruledOut: count.ruledOut.map(({ bound, builds }) => ({ bound, builds })),
      open: count.open,
      gap_dB: count.gap,
      passes: count.passes,
    },
    rows: rows.map(({ rank, tie, outcome }, index) => ({
      rank,
      tie,
      ...rowBandsData(sure?.rows[index]),
      outcome: outcomeData(outcome),
    })),
    nearestMiss: nearestMiss
      ? {
          duty: nearestMiss.duty,
          part: nearestMiss.part,
          of: nearestMiss.of,
          over_K: kelvinData(nearestMiss.over),
          reason: nearestMiss.reason ?? null,
          holding: sure?.missHolding ?? null,
          outcome: outcomeData(nearestMiss.outcome),
          wouldDo: wouldDoData(change),
        }
      : null,
    why: whyData(why),
  };
  return documentOf(result, meta);
}

/**
 * A solved build as a document.
 *
 * @param outcome the build
 * @param meta version, command and warnings
 * @param next what to change next; not asked if absent
 * @param change what would make the build adequate; not asked if absent
 * @param bands of its results; null where there are none
 */
export function solveDocument(
  outcome: BuildOutcome,
  meta: Meta,
  next?: WhatNext,
  change?: WouldDo,
  bands?: BuildBands | null,
): Document {
  const result = {
    outcome: outcomeData(outcome),
    bands: bandsData(bands),
    next: nextData(next),
    wouldDo: wouldDoData(change),
  };
  return documentOf(result, meta);
}

/**
 * What a scenario without problems holds, as a document.
 *
 * @param enclosure the scenario
 * @param space builds in its space
 * @param meta version, command and warnings
 */
export function checkDocument(enclosure: Enclosure, space: number, meta: Meta): Document {
  const { title, chambers, places, legs, parts, duties, builds, margin } = enclosure;
  const result = {
    title,
    space,
    margin_K: margin,
    chambers,
    places: places.map(placeData),
    legs: legs.map((leg) => ({
      leg: leg.id,
      from: chambers[leg.from] ?? null,
      to: chambers[leg.to] ?? null,
      through: leg.through.map((place) => places[place]?.id ?? null),
    })),
    parts: parts.map(partData),
    duties: duties.map(({ id, share, room }) => ({ duty: id, share, room_K: room })),
    builds: builds.map(({ id, options }) => ({ build: id, options })),
    problems: [],
  };
  return documentOf(result, meta);
}

/**
 * Problems of files as a document.
 *
 * @param problems at least one
 * @param meta version, command and warnings
 */
export function problemsDocument(problems: readonly Problem[], meta: Meta): Document {
  return documentOf({ problems: problems.map(problemData) }, meta);
}

function placeData({ kind, id, options }: Place): Json {
  return { place: id, kind, options: options.length };
}

function partData({ id, power, limits }: Part): Json {
  return { part: id, power_W: power, limits: limits.map(limitData) };
}

function limitData({ of, temperature }: Limit): Json {
  return { of, limit_K: temperature };
}

/**
 * A problem as data.
 *
 * @param problem in a file
 */
export function problemData(problem: Problem): Json {
  return {
    code: problem.code,
    file: problem.file,
    line: problem.line,
    column: problem.column,
    path: problem.path,
    message: problem.message,
    found: problem.found ?? null,
    expected: problem.expected ?? null,
    suggestion: problem.suggestion ?? null,
    sourceLine: problem.sourceLine ?? null,
  };
}
