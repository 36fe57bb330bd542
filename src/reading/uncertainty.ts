import { z } from 'zod';
import { type Stated, UNCERTAINTIES, type Uncertainties } from '../enclosure/uncertainties.ts';
import { bounded, written } from '../quantities/written.ts';
import { check, type Findings, isMap } from './findings.ts';
import { name } from './name.ts';
import { unknownName } from './name-findings.ts';

const within = <Value>(form: z.ZodType<Value>, most: number, words: string): z.ZodType<Value> =>
  bounded(form, words, (value) => value >= 0 && value <= most);

const share = within(written.percent, 3, 'from 0 % to 300 %');
const kelvins = within(written.temperatureDifference, 30, 'from 0 K to 30 K');
const decibels = within(written.decibel, 20, 'from 0 dB to 20 dB');

/** One figure for all, or figures by name. */
const named = (figure: z.ZodType<number>) => z.union([figure, z.record(name, figure)]).optional();

/** Form of `uncertainty`: half the width of the 90 % band of each figure. */
export const uncertaintyForm = z
  .strictObject({
    room: kelvins.optional(),
    heat: named(share),
    fixed: named(share),
    paste: named(share),
    base: named(share),
    pipes: named(share),
    fins: named(share),
    loss: named(share),
    skin: named(share),
    recirculation: named(share),
    curve: named(share),
    'slow-fan': share.optional(),
    'fan-power': share.optional(),
    rating: named(decibels),
  })
  .meta({
    description:
      'how far off figures may be: nine times in ten the true value is no further from what is stated',
  });

/** What the section refers to by name. */
export interface UncertaintyContext {
  readonly parts: readonly string[];
  readonly elements: readonly string[];
  readonly chambers: readonly string[];
  readonly legs: readonly string[];
  readonly fans: readonly string[];
}

/** Where a curve may come from, beside the names of fans. */
const ORIGINS = ['measured', 'datasheet', 'box'];

type NameList = keyof UncertaintyContext;

/** Whose names each key takes, and what they are called. */
const owners: readonly (readonly [string, NameList, string])[] = [
  ['heat', 'parts', 'part'],
  ['fixed', 'parts', 'part'],
  ['paste', 'parts', 'part'],
  ['base', 'parts', 'part'],
  ['pipes', 'parts', 'part'],
  ['fins', 'elements', 'element'],
  ['loss', 'elements', 'element'],
  ['skin', 'chambers', 'chamber'],
  ['recirculation', 'legs', 'leg'],
  ['curve', 'fans', 'fan'],
  ['rating', 'fans', 'fan'],
];

type Written = number | Record<string, number> | undefined;

/** A figure for all stands in the place of the usual one; figures by name beside it. */
function statedOf(given: Written, usual: Stated): Stated {
  if (typeof given === 'number') return { usual: given, of: {} };
  return given ? { ...usual, of: given } : usual;
}

function perhapsOf(given: Written): {
  readonly usual?: number;
  readonly of: Readonly<Record<string, number>>;
} {
  if (typeof given === 'number') return { usual: given, of: {} };
  return { of: given ?? {} };
}

function curveOf(given: Written): Uncertainties['curve'] {
  if (typeof given === 'number') return { measured: given, datasheet: given, box: given, of: {} };
  const { measured, datasheet, box, ...of } = given ?? {};
  const usual = UNCERTAINTIES.curve;
  return {
    measured: measured ?? usual.measured,
    datasheet: datasheet ?? usual.datasheet,
    ...(box === undefined ? {} : { box }),
    of,
  };
}

/** Reports names that nothing bears. */
function checkNames(value: unknown, context: UncertaintyContext, findings: Findings): void {
  for (const [key, list, what] of owners) {
    const names = isMap(value) && isMap(value[key]) ? Object.keys(value[key]) : [];
    const known = context[list];
    for (const each of names) {
      if (known.length === 0 || known.includes(each) || (key === 'curve' && ORIGINS.includes(each))) continue;
      findings.push(unknownName(what, each, known, ['uncertainty', key, each], 'key'));
    }
  }
}

/**
 * Reads `uncertainty`.
 *
 * @param value as written; undefined if the section is absent
 * @param context names it may use
 * @param findings receives what is wrong
 * @returns undefined where nothing is stated, or nothing that can be read
 */
export function readUncertainties(
  value: unknown,
  context: UncertaintyContext,
  findings: Findings,
): Uncertainties | undefined {
  if (value === undefined) return undefined;
  checkNames(value, context, findings);
  const given = check(uncertaintyForm, value, ['uncertainty'], findings);
  if (!given) return undefined;
  const usual = UNCERTAINTIES;
  return {
    room: given.room ?? usual.room,
    heat: statedOf(given.heat, usual.heat),
    fixed: statedOf(given.fixed, usual.fixed),
    paste: statedOf(given.paste, usual.paste),
    base: statedOf(given.base, usual.base),
    pipes: statedOf(given.pipes, usual.pipes),
    fins: statedOf(given.fins, usual.fins),
    finsBehindFan: typeof given.fins === 'number' ? given.fins : usual.finsBehindFan,
    loss: perhapsOf(given.loss),
    skin: statedOf(given.skin, usual.skin),
    recirculation: statedOf(given.recirculation, usual.recirculation),
    curve: curveOf(given.curve),
    slowFan: given['slow-fan'] ?? usual.slowFan,
    fanPower: given['fan-power'] ?? usual.fanPower,
    rating: perhapsOf(given.rating),
  };
}
