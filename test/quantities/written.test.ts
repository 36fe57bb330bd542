import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { bounded, notNegative, positive, written } from '../../src/quantities/written.ts';

function firstIssue(form: z.ZodType, value: unknown) {
  return form.safeParse(value).error?.issues[0];
}

describe('forms', () => {
  it.each([
    ['length', '120 mm', 0.12],
    ['area', '95 x 95 mm', 0.009025],
    ['area', '12 cm2', 0.0012],
    ['rectangle', '95 x 80 mm', { width: 0.095, height: 0.08 }],
    ['rectangle', '9.5 × 8 cm', { width: 0.095, height: 0.08 }],
    ['rectangle', '95 mm X 4 in', { width: 0.095, height: 0.1016 }],
    ['rectangle', '95mm', { width: 0.095, height: 0.095 }],
    ['lengthList', '4 5 6 mm', [0.004, 0.005, 0.006]],
    ['lengthList', '4, 5, 6 mm', [0.004, 0.005, 0.006]],
    ['lengthList', '4 mm', [0.004]],
    ['lengthList', '4 mm 5 mm', undefined],
    ['flowList', '0 36 72 m³/h', [0, 0.01, 0.02]],
    ['pressureList', '24 20 -3 Pa', [24, 20, -3]],
    ['percent', '30%', 0.3],
    ['price', 12.5, 12.5],
    ['price', 0, 0],
    ['count', 2, 2],
    ['factor', -1.5, -1.5],
  ] as const)('%s of %j', (kind, text, value) => {
    const result = written[kind].safeParse(text);
    if (value === undefined) expect(result.success).toBe(false);
    else expect(result.data).toEqual(value);
  });

  it.each([
    ['length', 120, '120 without a unit', '120 mm'],
    ['lengthList', '4 5 6', '6 without a unit', '4 5 6 mm'],
    ['flowList', '0 10 20 m3/hh', '20 m3/hh (there is no unit "m3/hh")', '0 10 20 m³/h'],
    ['rectangle', '95 x 80', '80 without a unit', '95 x 80 mm'],
    ['rectangle', '9,5 x 8 cm', '9,5 x 8 cm with a comma', '9.5 x 8 cm'],
  ] as const)('%s of %j is refused and mended', (kind, text, found, suggestion) => {
    expect(firstIssue(written[kind], text)).toMatchObject({ code: 'custom', params: { found, suggestion } });
  });

  it.each([
    ['length', null, 'nothing'],
    ['length', undefined, 'nothing'],
    ['length', [1], 'a list'],
    ['length', { mm: 1 }, 'a map'],
    ['length', true, 'true'],
    ['rectangle', '1 x 2 x 3 mm', '1 x 2 x 3 mm'],
    ['rectangle', 'x mm', 'x mm'],
    ['lengthList', '', ''],
    ['price', -1, '-1'],
    ['price', '12 EUR', '12 EUR'],
    ['count', 0, '0'],
    ['count', 1.5, '1.5'],
    ['factor', Number.NaN, 'NaN'],
    ['factor', Number.POSITIVE_INFINITY, 'Infinity'],
    ['factor', '0x10', '0x10'],
    ['factor', 1e300, '1e+300'],
    ['area', '12 x 12', '12 without a unit'],
    ['area', '12 mm', '12 mm, a length'],
    ['rectangle', '4 x 5'.padEnd(300), '4 x 5'.padEnd(77).concat('...')],
    ['rectangle', '4 W x 5 mm', '4 W, a power'],
    ['lengthList', '1e99 2 m', '1e99 2 m'],
    ['lengthList', '4 '.repeat(6000), '4 '.repeat(39).slice(0, 77).concat('...')],
  ] as const)('%s of %j is refused', (kind, value, found) => {
    expect(firstIssue(written[kind], value)).toMatchObject({ code: 'custom', params: { found } });
  });

  it('refuses temperatures below absolute zero', () => {
    expect(written.temperature.safeParse('-274 °C').success).toBe(false);
    expect(written.temperature.safeParse('-273 °C').success).toBe(true);
  });
});

describe('bounds', () => {
  it('look at every number of a form', () => {
    expect(positive(written.length).safeParse('0 mm').success).toBe(false);
    expect(positive(written.rectangle).safeParse('3 x 0 mm').success).toBe(false);
    expect(positive(written.lengthList).safeParse('3 4 mm').success).toBe(true);
    expect(notNegative(written.lengthList).safeParse('0 4 mm').success).toBe(true);
    expect(notNegative(written.lengthList).safeParse('0 -4 mm').success).toBe(false);
  });

  it('say what was found and expected', () => {
    const form = bounded(written.percent, 'less than 100 %', (share) => share < 1);
    expect(firstIssue(form, '120 %')).toMatchObject({
      message: 'found 1.2 (in SI), expected less than 100 %',
      params: { expected: 'less than 100 %' },
    });
  });
});

describe('schema for editors', () => {
  it('shows strings with a description, required unless optional', () => {
    const form = z.strictObject({
      depth: positive(written.length),
      gap: notNegative(written.length).default(0),
    });
    expect(z.toJSONSchema(form, { io: 'input' })).toMatchObject({
      required: ['depth'],
      properties: {
        depth: {
          type: 'string',
          description: 'a length with its unit, such as 120 mm (units: mm, cm, m, km, µm, in, ft)',
          examples: ['120 mm'],
        },
        gap: { type: 'string' },
      },
    });
  });

  it.each(Object.keys(written))('can show %s', (kind) => {
    const form = Object.entries(written).find(([name]) => name === kind)?.[1];
    expect(form && z.toJSONSchema(form, { io: 'input' })).toHaveProperty('description');
  });
});
