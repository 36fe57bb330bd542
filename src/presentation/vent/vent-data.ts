import type { Band } from '../../bands/band.ts';
import type { PerforatedSheet } from '../../elements/perforated-sheet.ts';
import type { Decibels } from '../../quantities/dimensions.ts';
import type { VentAnswer } from '../../questions/vent/vent.ts';
import type { VentCandidate } from '../../questions/vent/vent-candidates.ts';
import type { VentPoint } from '../../questions/vent/vent-curve.ts';
import type { VentPattern } from '../../questions/vent/vent-pattern.ts';
import type { VentState } from '../../questions/vent/vent-state.ts';
import type { VentSure } from '../../questions/vent/vent-sure.ts';
import { bandData } from '../bands/band-data.ts';
import { type CsvCell, toCsv } from '../csv.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { kelvinData, temperatureData } from '../tellable.ts';
import { scenarioLine } from './sheet-words.ts';

/** No sound at all has no level. */
function levelData(level: Decibels): Json {
  return Number.isFinite(level) ? level : null;
}

function stateData({ flow, temperature, margin, subject, level, openingLevel }: VentState) {
  return {
    flow_m3_s: flow,
    subject: subject ?? null,
    temperature_K: temperatureData(temperature),
    margin_K: kelvinData(margin),
    level_dBA: levelData(level),
    openingLevel_dBA: levelData(openingLevel),
  };
}

function pointData({ area, share, ...state }: VentPoint): Json {
  return { area_m2: area, flowShare: share, ...stateData(state) };
}

function sheetData({ perforated, hole, web, sheet, shape, pattern, facing, ...rest }: PerforatedSheet): Json {
  return {
    width_m: perforated.width,
    height_m: perforated.height,
    shape,
    hole_m: hole,
    slotLength_m: rest['slot-length'] ?? null,
    web_m: web,
    thickness_m: sheet,
    arrangement: pattern,
    facing,
  };
}

function patternData(pattern: VentPattern, place: string): { readonly [key: string]: Json } {
  return {
    sheet: sheetData(pattern.sheet),
    holes: pattern.count,
    pitch_m: pattern.pitch,
    rowPitch_m: pattern.rowPitch,
    area_m2: pattern.area,
    openShare: pattern.openShare,
    flowShare: pattern.share,
    ...stateData(pattern),
    faceVelocity_m_s: pattern.faceVelocity,
    holeVelocity_m_s: pattern.holeVelocity,
    fingerDistance_m: pattern.fingers ?? null,
    warnings: pattern.warnings,
    scenarioLine: scenarioLine(place, pattern.sheet),
  };
}

function candidateData(candidate: VentCandidate, place: string): Json {
  return { ...patternData(candidate, place), reaches: candidate.reaches };
}

/** An end of the band of a margin, null where it is none or beyond all use. */
function marginEnd(end: number | undefined): number | null {
  return end === undefined || !Number.isFinite(end) ? null : kelvinData(end);
}

function marginData(margin: Band | undefined): Json {
  if (!margin) return null;
  return {
    low: marginEnd(margin.low),
    expected: marginEnd(margin.expected),
    high: marginEnd(margin.high),
  };
}

function sureData(sure: VentSure | null): Json {
  return (
    sure && {
      flow_m3_s: bandData(sure.flow),
      subject: sure.subject ?? null,
      margin_K: marginData(sure.margin),
      level_dBA: bandData(sure.level),
      holding: sure.holding ?? null,
    }
  );
}

/**
 * What was found about an opening, as a document.
 *
 * @param answer to the question
 * @param meta version, command and warnings
 */
export function ventDocument(answer: VentAnswer, meta: Meta): Document {
  const { task, open, now, candidates, curve, anew, sure } = answer;
  const place = task.enclosure.places[task.place]?.id ?? '';
  const result = {
    title: task.enclosure.title,
    opening: place,
    duty: task.duty.id,
    process: task.process,
    leastWeb_m: task.leastWeb,
    blades_m: task.blades,
    keep: task.keep,
    aim: task.aim,
    openFlow_m3_s: open.flow,
    keepsFlow_m2: curve.keepsFlow ?? null,
    holdsLimits_m2: curve.holdsLimits ?? null,
    mostFlowShare: curve.most,
    knee: curve.knee ? pointData(curve.knee) : null,
    now: now ? patternData(now, place) : null,
    patterns: candidates.map((candidate) => candidateData(candidate, place)),
    anew: { adequate: anew.adequate, level_dBA: levelData(anew.level), quieter_dB: anew.quieter },
    sure: { pattern: sureData(sure.best), asItIs: sureData(sure.asItIs) },
    curve: curve.points.map(pointData),
  };
  return documentOf(result, meta);
}

function sureCells(sure: VentSure | null | undefined): readonly CsvCell[] {
  return [
    sure?.flow.low ?? null,
    sure?.flow.high ?? null,
    marginEnd(sure?.margin?.low),
    marginEnd(sure?.margin?.high),
    sure?.level.low ?? null,
    sure?.level.high ?? null,
    sure?.holding ?? null,
  ];
}

/**
 * Flow, temperature and noise against free area, with bands, as comma-separated values.
 *
 * @param answer to the question
 * @param sure bands of each point of its curve, in order; null for one without
 */
export function ventCsv({ curve }: VentAnswer, sure: readonly (VentSure | null)[]): string {
  const heads = [
    'area [m2]',
    'flow [m3/s]',
    'flow share [-]',
    'temperature [K]',
    'margin [K]',
    'level [dB(A)]',
    'opening level [dB(A)]',
    'flow from [m3/s]',
    'flow to [m3/s]',
    'margin from [K]',
    'margin to [K]',
    'level from [dB(A)]',
    'level to [dB(A)]',
    'limits hold [-]',
  ];
  return toCsv(
    heads,
    curve.points.map(({ area, flow, share, temperature, margin, level, openingLevel }, index) => [
      area,
      flow,
      share,
      temperatureData(temperature),
      kelvinData(margin),
      level,
      openingLevel,
      ...sureCells(sure[index]),
    ]),
  );
}
