import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { readCatalog } from '../../src/reading/catalog-file.ts';
import { familyForm } from '../../src/reading/fan-form.ts';
import type { Problem } from '../../src/reading/problem.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { scenarioForm } from '../../src/reading/scenario-form.ts';
import { FAMILY, SCENARIO } from './samples.ts';
import { fans } from './scenario-cases.ts';

/** A piece taken out of a text and another put in its place. */
const slip = fc.record({
  share: fc.double({ min: 0, max: 1, noNaN: true }),
  removed: fc.integer({ min: 0, max: 12 }),
  inserted: fc.oneof(
    fc.string({ maxLength: 3 }),
    fc.constantFrom(
      '[',
      '}',
      ':',
      '- ',
      '\n',
      '\t',
      'null',
      '-5',
      '1e999 mm',
      '__proto__: ',
      'constructor',
      '&a ',
      '*a',
      '"',
      '0 %',
      '9 K',
    ),
  ),
});

function slipped(
  text: string,
  slips: readonly { readonly share: number; readonly removed: number; readonly inserted: string }[],
): string {
  return slips.reduce((before, { share, removed, inserted }) => {
    const start = Math.floor(share * before.length);
    return before.slice(0, start) + inserted + before.slice(start + removed);
  }, text);
}

/** Problems have words, and a place that exists. */
function expectSound(problems: readonly Problem[], text: string): void {
  expect(problems.length).toBeGreaterThan(0);
  const lines = text.split(/\r\n|\n|\r/);
  for (const { line, column, message } of problems) {
    expect(message).not.toBe('');
    expect(message).not.toMatch(/undefined|Invalid|NaN/);
    expect(column).toBeGreaterThanOrEqual(1);
    expect(column).toBeLessThanOrEqual((lines[line - 1]?.length ?? -2) + 1);
  }
}

describe('a file with slips in it', () => {
  it('is read as a scenario or explained', () => {
    fc.assert(
      fc.property(fc.array(slip, { minLength: 1, maxLength: 3 }), (slips) => {
        const text = slipped(SCENARIO, slips);
        const outcome = readScenario('f', text, fans);
        if (!outcome.ok) expectSound(outcome.problems, text);
      }),
      { seed: 20_260_305, numRuns: 400 },
    );
  });

  it('is read as a family of fans or explained', () => {
    fc.assert(
      fc.property(fc.array(slip, { minLength: 1, maxLength: 3 }), (slips) => {
        const text = slipped(FAMILY, slips);
        const outcome = readCatalog('f', text);
        if (!outcome.ok) expectSound(outcome.problems, text);
      }),
      { seed: 20_260_306, numRuns: 400 },
    );
  });
});

describe('names that mean something to the language', () => {
  function renamed(word: string): string {
    return SCENARIO.replaceAll('side-gap', word).replaceAll('as-built', word).replaceAll('board', word);
  }

  it.each(['constructor', 'toString', 'hasOwnProperty', 'prototype'])(
    '"%s" is a name as any other',
    (word) => {
      const outcome = readScenario('f', renamed(word), fans);
      expect(outcome).toMatchObject({ ok: true, enclosure: { duties: [{}, { heat: [1, 0.5] }, {}] } });
      expect(outcome.ok && outcome.enclosure.places[3]?.id).toBe(word);
      expect(outcome.ok && outcome.enclosure.builds[0]?.id).toBe(word);
    },
  );

  it('"__proto__" is no name, and does no harm', () => {
    const outcome = readScenario('f', renamed('__proto__'), fans);
    const problems = outcome.ok ? [] : outcome.problems;
    expect(problems.map(({ path, message }) => [path.join('.'), message])).toEqual([
      ['heat.1.part', 'this name is reserved'],
      ['airway.legs.1.through.0', 'this name is reserved'],
      ['elements.__proto__', 'this name is reserved'],
      ['builds.__proto__', 'this name is reserved'],
      ['readings.0.build', 'this name is reserved'],
      ['readings.1.build', 'this name is reserved'],
    ]);
    expect({}).not.toHaveProperty('slot');
  });
});

describe('schemas for editors', () => {
  it.each([
    ['a scenario', scenarioForm, ['site', 'listener', 'heat', 'airway', 'elements']],
    ['a family', familyForm, ['family', 'provenance', 'fans']],
  ])('can be made of the form of %s', (_, form, required) => {
    for (const target of ['draft-7', 'draft-2020-12'] as const) {
      expect(z.toJSONSchema(form, { io: 'input', target })).toMatchObject({ type: 'object', required });
    }
  });

  it('describe quantities as text with a unit', () => {
    expect(z.toJSONSchema(scenarioForm, { io: 'input' })).toMatchObject({
      properties: { site: { properties: { room: { type: 'string', examples: ['26 °C'] } } } },
    });
  });
});
