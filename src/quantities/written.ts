import { z } from 'zod';
import { readArea, readList, readRectangle } from './lists.ts';
import { clip, type Misfit, misfit, type Outcome } from './misfit.ts';
import { AREA, listSpelling, quantitySpelling, RECTANGLE, type Spelling } from './quantity-pattern.ts';
import { type KindName, kinds } from './unit-table.ts';
import { MOST, readQuantity, usualUnit } from './units.ts';

/**
 * Forms of quantities as people write them. Each takes a text with a unit and gives numbers in SI; a misfit
 * is a zod issue of code "custom" with `params: { found, expected, suggestion? }`. Range checks are left to
 * `positive` and `notNegative`.
 */
export const written = {
  /** [m] */
  length: quantity('length'),
  /** Plain or as a rectangle [m²]. */
  area: form('area', ['12 cm²', '95 x 80 mm'], readArea, AREA),
  /** Sides [m]; one number is a square. */
  rectangle: form('sides of a rectangle', ['95 x 80 mm', '95 mm'], readRectangle, RECTANGLE),
  /** [m] */
  lengthList: list('length', '4 5 6 mm'),
  /** [m³/s] */
  flow: quantity('flow'),
  /** [m³/s] */
  flowList: list('flow', '0 10 20 m³/h'),
  /** [Pa] */
  pressure: quantity('pressure'),
  /** [Pa] */
  pressureList: list('pressure', '24 20 0 Pa'),
  /** [W] */
  power: quantity('power'),
  /** Thermodynamic [K]. */
  temperature: bounded(
    quantity('temperature'),
    'a temperature above absolute zero',
    (kelvins) => kelvins > 0,
  ),
  /** [K] */
  temperatureDifference: quantity('temperatureDifference'),
  /** Revolutions [1/s]. */
  speed: quantity('speed'),
  /** A-weighted [dB]; bels become decibels. */
  level: quantity('level'),
  /** A difference of levels [dB]. */
  decibel: quantity('decibel'),
  /** Levels that are not A-weighted [dB]. */
  decibelList: list('decibel', '20 24 28 30 29 26 20 14 dB'),
  /** 100 % = 1 [-]. */
  percent: quantity('percent'),
  /** [K/W] */
  thermalResistance: quantity('thermalResistance'),
  /** [1/K] */
  perKelvin: quantity('perKelvin'),
  /** [W/(m·K)] */
  conductivity: quantity('conductivity'),
  /** [W/K] */
  conductance: quantity('conductance'),
  /** [Pa·s/m³] */
  linearLoss: quantity('linearLoss'),
  /** [Pa·s²/m⁶] */
  quadraticLoss: quantity('quadraticLoss'),
  /** [m/s] */
  velocity: quantity('velocity'),
  /** [rad] */
  angle: quantity('angle'),
  /** Pores per metre [1/m]. */
  porosity: quantity('porosity'),
  /** [A] */
  current: quantity('current'),
  /** [V] */
  voltage: quantity('voltage'),
  /** In whatever currency the user thinks [-]. */
  price: plainNumber('a price: a plain number, not negative', (value) => value >= 0),
  /** [-] */
  count: plainNumber('a whole number, 1 or more', (value) => Number.isInteger(value) && value >= 1),
  /** Any finite number [-]. */
  factor: plainNumber('a plain number without a unit', () => true),
};

/**
 * The same form for values above zero only; of a list or rectangle every number is checked.
 *
 * @param form whose numbers are checked
 */
export function positive<Value>(form: z.ZodType<Value>): z.ZodType<Value> {
  return bounded(form, 'more than 0', (value) => value > 0);
}

/**
 * The same form for values of zero and above only; of a list or rectangle every number is checked.
 *
 * @param form whose numbers are checked
 */
export function notNegative<Value>(form: z.ZodType<Value>): z.ZodType<Value> {
  return bounded(form, '0 or more', (value) => value >= 0);
}

/**
 * The same form with one more demand on its numbers.
 *
 * @param form whose numbers are checked
 * @param expected the demand in words, for example "more than 0"
 * @param holds true for a number in SI that is allowed
 */
export function bounded<Value>(
  form: z.ZodType<Value>,
  expected: string,
  holds: (value: number) => boolean,
): z.ZodType<Value> {
  return form.superRefine((value, context) => {
    const outside = numbersIn(value).find((number) => !holds(number));
    if (outside === undefined) return;
    context.addIssue({
      code: 'custom',
      message: `found ${outside} (in SI), expected ${expected}`,
      params: { expected },
    });
  });
}

/**
 * What stands in a place, in words for a message.
 *
 * @param input any value that a file may hold
 */
export function describeValue(input: unknown): string {
  if (input === undefined || input === null) return 'nothing';
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object') return 'a map';
  return clip(String(input));
}

function quantity(kind: KindName): z.ZodType<number> {
  const typical = `${kinds[kind].typical} ${usualUnit(kind).name}`;
  return form(kinds[kind].noun, [typical], (text) => readQuantity(kind, text), quantitySpelling(kind));
}

function list(kind: KindName, typical: string): z.ZodType<readonly number[]> {
  const noun = `numbers, each ${kinds[kind].noun},`;
  return form(noun, [typical], (text) => readList(kind, text), listSpelling(kind));
}

/** The schema for editors says "string", while the check sees everything and can name the unit that lacks. */
function form<Value>(
  noun: string,
  examples: string[],
  read: (text: string) => Outcome<Value>,
  { pattern, units }: Spelling,
): z.ZodType<Value> {
  const [typical = ''] = examples;
  const which = units.length > 1 ? ` (units: ${units.join(', ')})` : '';
  const description = `${noun} with its unit, such as ${typical}${which}`;
  const patternErrorMessage = `Write ${description}`;
  return z
    .unknown()
    .meta({ type: 'string', description, examples, pattern, patternErrorMessage })
    .transform((input, context) => {
      const readable = typeof input === 'string' || typeof input === 'number';
      const outcome: Outcome<Value> = readable
        ? read(String(input))
        : misfit(describeValue(input), `${noun} such as ${typical}`);
      if (outcome.ok) return outcome.value;
      addMisfit(context, input, outcome.misfit);
      return z.NEVER;
    });
}

function plainNumber(expected: string, holds: (value: number) => boolean): z.ZodType<number> {
  return z
    .unknown()
    .meta({ type: 'number', description: expected })
    .transform((input, context) => {
      if (typeof input === 'number' && Math.abs(input) <= MOST && holds(input)) return input;
      addMisfit(context, input, { found: describeValue(input), expected });
      return z.NEVER;
    });
}

function addMisfit(context: z.RefinementCtx, input: unknown, misfit: Misfit): void {
  const message = `found ${misfit.found}, expected ${misfit.expected}`;
  context.addIssue({ code: 'custom', input, message, params: { ...misfit } });
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value === 'object' && value !== null) return Object.values(value).flatMap(numbersIn);
  return [];
}
