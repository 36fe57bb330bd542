import { z } from 'zod';
import { ASSUMPTIONS, type Assumptions } from '../enclosure/assumptions.ts';
import { bounded, written } from '../quantities/written.ts';
import { FIELD_DIRECTIVITY } from '../sound/rating.ts';
import { check, type Findings, isMap } from './findings.ts';

/** Words allowed where an assumption is a word and not a number, by key. */
const words: Readonly<Record<string, readonly string[]>> = { powerField: Object.keys(FIELD_DIRECTIVITY) };

/** Rises of a level [dB]: the proof of a ranking rests on none of them being negative. */
const rise = { least: 0, most: 100 };

/** Divisors and slopes: nothing so small that it stands for nothing. */
const above = { least: 0.001, most: 1000 };

/**
 * Assumptions that make no sense outside a range, by key: areas and resistances that must not vanish [-], rises that
 * must not be falls.
 */
const ranges: Readonly<Record<string, { readonly least: number; readonly most: number }>> = {
  rise,
  guard: rise,
  mesh: rise,
  panel: rise,
  fins: rise,
  wall: rise,
  bar: rise,
  fan: rise,
  'counter-fan': rise,
  installationCap: rise,
  secondNeighbour: { least: 0, most: 1 },
  ramp: { least: 0.001, most: 1 },
  gapScale: above,
  least: above,
  most: above,
  leastRise: above,
  ratingScatter: above,
  speedExponentUncertainty: above,
  bladeCircle: { least: 0.5, most: 1 },
  hub: { least: 0, most: 0.9 },
  stopped: { least: 0.01, most: 100 },
  hole: { least: 0.1, most: 100 },
  // Kelvins: a figure in °C would make every build inadequate.
  hottestPart: { least: 300, most: 3000 },
};

/** Form of `assume`: the same tree as the defaults, of which any part may be given. */
export const assumeForm = formOf(ASSUMPTIONS, '').optional();

/**
 * Reads `assume` over the default assumptions.
 *
 * @param value as written; numbers are plain, in the units the assumptions are listed in
 * @param findings receives what is wrong
 */
export function readAssumptions(value: unknown, findings: Findings): Assumptions {
  const given = check(assumeForm, value, ['assume'], findings);
  const assumptions = overlay(ASSUMPTIONS, given);
  checkOrder(assumptions, findings);
  return assumptions;
}

/** Lists and ranges are read in order, so they must stand in it. */
function checkOrder({ sound }: Assumptions, findings: Findings): void {
  const { workingPoint, levelBands, speedExponentRange } = sound;
  const ordered: readonly (readonly [string, readonly number[]])[] = [
    ['working-point', workingPoint.map(({ flowShare }) => flowShare)],
    ['level-bands', levelBands.map(({ upTo }) => upTo)],
    ['speed-exponent-range', [speedExponentRange.least, speedExponentRange.most]],
  ];
  for (const [key, values] of ordered) {
    if (values.every((each, index) => index === 0 || each > (values[index - 1] as number))) continue;
    findings.push({
      code: 'conflict',
      path: ['assume', 'sound', key],
      at: 'value',
      message: 'these do not rise from each to the next',
      found: values.join(', '),
      expected: 'each greater than the one before',
    });
  }
}

function numberForm(key: string): z.ZodType {
  const range = ranges[key];
  if (!range) return written.factor;
  const { least, most } = range;
  return bounded(written.factor, `from ${least} to ${most}`, (value) => value >= least && value <= most);
}

/** The form of a tree of defaults: maps may be given in part, lists only as a whole. */
function formOf(template: unknown, key: string): z.ZodType {
  if (typeof template === 'number') return numberForm(key);
  if (typeof template === 'string') return z.enum(words[key] ?? [template]);
  if (Array.isArray(template)) return z.array(itemForm(template)).min(1);
  const entries = Object.entries(isMap(template) ? template : {});
  return z.strictObject(
    Object.fromEntries(entries.map(([name, inner]) => [dashed(name), formOf(inner, name).optional()])),
  );
}

/** Items of a list are maps with all keys of the default's items; words are those the default uses. */
function itemForm(template: readonly unknown[]): z.ZodType {
  const [first] = template;
  if (!isMap(first)) return formOf(first, '');
  return z.strictObject(
    Object.fromEntries(
      Object.keys(first).map((name) => {
        const used = template.map((item) => (isMap(item) ? item[name] : undefined));
        const texts = used.filter((word) => typeof word === 'string');
        return [dashed(name), texts.length > 0 ? z.enum(texts) : formOf(first[name], name)];
      }),
    ),
  );
}

function overlay<Tree>(template: Tree, given: unknown): Tree;
function overlay(template: unknown, given: unknown): unknown {
  if (given === undefined) return template;
  if (Array.isArray(given)) {
    const [first] = Array.isArray(template) ? template : [];
    return given.map((item) => overlay(first, item));
  }
  if (!isMap(template) || !isMap(given)) return given;
  return Object.fromEntries(
    Object.entries(template).map(([name, inner]) => [name, overlay(inner, given[dashed(name)])]),
  );
}

/** Keys in files have dashes: "fanFloor" is written "fan-floor". */
function dashed(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
