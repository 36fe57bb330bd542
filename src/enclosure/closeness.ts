import type { Disturbance, Element } from '../elements/element.ts';
import type { FanAssumptions } from '../fan/fan-assumptions.ts';
import { type FanRow, usedShare, wallCoefficient } from '../fan/installation-loss.ts';
import type { Fraction, Metres } from '../quantities/dimensions.ts';
import type { Bank, BankPlace, Build, Enclosure, Leg, Place } from './enclosure.ts';

/** An element that air uses only in part because fans stand close. */
export interface Closeness {
  /** Share of its face [-], 0 < share < 1. */
  readonly used: Fraction;
  /** Place of those fans. */
  readonly bank: number;
}

/** Sheets of holes or bars: air spreads before them sooner than before fins and filters. */
const SHEETS: readonly (Disturbance | undefined)[] = ['guard', 'panel'];
/** So thin that what stands behind them is as close to the fans. */
const THIN: readonly (Disturbance | undefined)[] = ['guard', 'panel', 'mesh'];

/** Frames that a bank has in its panel, turning or not. */
function framesOf({ fan, count, lost }: Bank): FanRow {
  return { size: fan.size, count: count + (lost ? lost.dead + lost.missing : 0) };
}

/** Inertial coefficient of the walls close to a bank [1/m⁴]; undefined if none counts. */
export function wallsOf(enclosure: Enclosure, place: BankPlace, bank: Bank): number | undefined {
  const walls = { inlet: place.inletWall, outlet: place.outletWall };
  const coefficient = wallCoefficient(framesOf(bank), walls, enclosure.assumptions.fan);
  return coefficient > 0 ? coefficient : undefined;
}

/** An element that a bank's air meets before it has spread. */
export interface CloseElement {
  /** Its position in the leg. */
  readonly position: number;
  readonly element: Element;
  /** Share of its face that the bank's air uses [-], 0 < share < 1. */
  readonly used: Fraction;
}

/** Where to look from a bank, and how far. */
export interface Look {
  readonly leg: Leg;
  /** Position of the bank in the leg. */
  readonly position: number;
  /** Up or down the stream. */
  readonly step: 1 | -1;
  /** Clear distance from the bank to what comes next [m]. */
  readonly gap: Metres;
  /** Looks past places that stand empty in the build; if not, every place for fans ends the look. */
  readonly past: boolean;
}

/** Depth of a place for fans that one may look past; undefined if it ends the look. */
function depthPast(place: BankPlace, option: number, past: boolean): Metres | undefined {
  return past && (place.options[option] ?? null) === null ? place.depth : undefined;
}

/** Share of an element's face that air of fans at a distance uses [-]. */
function usedAt({ face, disturbance }: Element, gap: Metres, row: FanRow, fan: FanAssumptions): Fraction {
  if (face === undefined) return 1;
  return usedShare(row, gap, face, SHEETS.includes(disturbance) ? fan.plenum.sheet : fan.plenum.deep, fan);
}

interface Met {
  readonly position: number;
  readonly element: Element;
  readonly gap: Metres;
}

/** Elements that a look meets: up to the first that is deep or has no face, or to a place for fans that ends it. */
function metElements(enclosure: Enclosure, build: Build, look: Look): readonly Met[] {
  const { through } = look.leg;
  const met: Met[] = [];
  let { gap } = look;
  for (let at = look.position + look.step; at >= 0 && at < through.length; at += look.step) {
    const index = through[at] as number;
    const place = enclosure.places[index] as Place;
    const option = build[index] ?? 0;
    if (place.kind === 'bank') {
      const depth = depthPast(place, option, look.past);
      if (depth === undefined) return met;
      gap += depth;
      continue;
    }
    const element = place.options[option]?.element;
    if (element?.face === undefined) return met;
    met.push({ position: at, element, gap });
    if (!THIN.includes(element.disturbance)) return met;
  }
  return met;
}

/**
 * Elements that a bank's air uses only in part, nearest first; empty places add their depth to the distance.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param bank that the air belongs to
 * @param look where and how far
 */
export function closeElements(
  enclosure: Enclosure,
  build: Build,
  bank: Bank,
  look: Look,
): readonly CloseElement[] {
  const row = framesOf(bank);
  return metElements(enclosure, build, look)
    .map(({ position, element, gap }) => ({
      position,
      element,
      used: usedAt(element, gap, row, enclosure.assumptions.fan),
    }))
    .filter(({ used }) => used < 1);
}

/**
 * Elements of a leg that fans of a build stand too close to, by position; null for all that are used as a whole.
 * Between two banks the one that leaves less of an element counts.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param leg to look at
 */
export function closenessIn(enclosure: Enclosure, build: Build, leg: Leg): readonly (Closeness | null)[] {
  const found = leg.through.map((): Closeness | null => null);
  for (const [position, index] of leg.through.entries()) {
    const place = enclosure.places[index] as Place;
    if (place.kind !== 'bank') continue;
    const bank = place.options[build[index] ?? 0] ?? null;
    if (bank === null) continue;
    const look = { leg, position, past: true };
    const around = [
      ...closeElements(enclosure, build, bank, { ...look, step: -1, gap: place.inletGap }),
      ...closeElements(enclosure, build, bank, { ...look, step: 1, gap: place.outletGap }),
    ];
    for (const { position: at, used } of around) {
      if (used < (found[at]?.used ?? 1)) found[at] = { used, bank: index };
    }
  }
  return found;
}
