import type { PerforatedSheet } from '../../elements/perforated-sheet.ts';
import type { Decibels } from '../../quantities/dimensions.ts';
import type { VentAnswer } from '../../questions/vent/vent.ts';
import type { VentCandidate } from '../../questions/vent/vent-candidates.ts';
import type { VentPoint } from '../../questions/vent/vent-curve.ts';
import type { VentPattern } from '../../questions/vent/vent-pattern.ts';
import type { VentState } from '../../questions/vent/vent-state.ts';
import { toCsv } from '../csv.ts';
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

/**
 * What was found about an opening, as a document.
 *
 * @param answer to the question
 * @param meta version, command and warnings
 */
export function ventDocument({ task, open, now, candidates, curve, anew }: VentAnswer, meta: Meta): Document {
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
    curve: curve.points.map(pointData),
  };
  return documentOf(result, meta);
}

/**
 * Flow, temperature and noise against free area, as comma-separated values.
 *
 * @param answer to the question
 */
export function ventCsv({ curve }: VentAnswer): string {
  const heads = [
    'area [m2]',
    'flow [m3/s]',
    'flow share [-]',
    'temperature [K]',
    'margin [K]',
    'level [dB(A)]',
    'opening level [dB(A)]',
  ];
  return toCsv(
    heads,
    curve.points.map(({ area, flow, share, temperature, margin, level, openingLevel }) => [
      area,
      flow,
      share,
      temperatureData(temperature),
      kelvinData(margin),
      level,
      openingLevel,
    ]),
  );
}
