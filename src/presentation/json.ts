import type { Enclosure, Limit, Part, Place } from '../enclosure/enclosure.ts';
import type { BuildOutcome } from '../enclosure/outcome.ts';
import type { Problem } from '../reading/problem.ts';
import type { Ranking } from '../search/ranking.ts';
import { type Document, documentOf, type Json, type Meta } from './document.ts';
import { outcomeData } from './outcome-data.ts';

/**
 * A ranking as a document.
 *
 * @param ranking answer of a search
 * @param meta version, command and warnings
 */
export function rankDocument({ title, complete, count, rows, nearestMiss }: Ranking, meta: Meta): Document {
  const result = {
    title,
    complete,
    count: {
      space: count.space,
      solved: count.solved,
      ruledOut: count.ruledOut.map(({ bound, builds }) => ({ bound, builds })),
      open: count.open,
      gap_dB: count.gap,
      passes: count.passes,
    },
    rows: rows.map(({ rank, tie, outcome }) => ({ rank, tie, outcome: outcomeData(outcome) })),
    nearestMiss: nearestMiss
      ? {
          duty: nearestMiss.duty,
          part: nearestMiss.part,
          of: nearestMiss.of,
          over_K: nearestMiss.over,
          reason: nearestMiss.reason ?? null,
          outcome: outcomeData(nearestMiss.outcome),
        }
      : null,
  };
  return documentOf(result, meta);
}

/**
 * A solved build as a document.
 *
 * @param outcome the build
 * @param meta version, command and warnings
 */
export function solveDocument(outcome: BuildOutcome, meta: Meta): Document {
  return documentOf({ outcome: outcomeData(outcome) }, meta);
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

function problemData(problem: Problem): Json {
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
