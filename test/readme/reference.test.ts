import { load } from 'js-yaml';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { elementKinds } from '../../src/elements/kinds.ts';
import { ASSUMPTIONS } from '../../src/enclosure/assumptions.ts';
import { kinds } from '../../src/quantities/unit-table.ts';
import { readQuantity } from '../../src/quantities/units.ts';
import { askForm } from '../../src/reading/asks/asks.ts';
import { headerForm } from '../../src/reading/asks/headers.ts';
import { bankChoiceForm, bankForm } from '../../src/reading/bank-fields.ts';
import { dutyForm } from '../../src/reading/duties.ts';
import { familyForm, fanForm } from '../../src/reading/fan-form.ts';
import { formAt, keysOf } from '../../src/reading/form-tree.ts';
import { airwayForm } from '../../src/reading/legs.ts';
import { partForm } from '../../src/reading/parts.ts';
import { readingForm } from '../../src/reading/readings.ts';
import { scenarioForm } from '../../src/reading/scenario-form.ts';
import { listenerForm, siteForm } from '../../src/reading/site.ts';
import { stockForm } from '../../src/reading/stock/stock-file.ts';
import { uncertaintyForm } from '../../src/reading/uncertainty.ts';
import { codeIn, rowsOf, sectionOf, textOf } from './document.ts';

const readme = textOf('README.md');

/** Words a text names in backticks; of `{ hole: 4 mm }` the key, of `site.room` the part behind the point. */
function namedIn(text: string): ReadonlySet<string> {
  const code = codeIn(text.replaceAll('\n  ', ' '));
  return new Set(
    code.flatMap((each) => [each, each.replace(/^\w+\./, ''), ...(each.match(/[\w-]+(?=:)/g) ?? [])]),
  );
}

describe('the keys of a scenario and of a catalog', () => {
  const leg = formAt(airwayForm, ['legs', 0], undefined);
  const cases: readonly (readonly [string, string, readonly string[]])[] = [
    ['sections', 'The scenario file', keysOf(scenarioForm)],
    ['site', 'title, site, listener, margin', keysOf(siteForm)],
    ['listener', 'title, site, listener, margin', keysOf(listenerForm)],
    ['heat', 'heat', keysOf(partForm)],
    ['airway', 'airway', [...keysOf(airwayForm), ...keysOf(leg)]],
    ['banks', 'A place for fans', keysOf(bankForm)],
    ['choices of banks', 'choices', keysOf(bankChoiceForm)],
    ['duties', 'duties', keysOf(dutyForm)],
    ['asks', 'ask, headers', keysOf(askForm)],
    ['headers', 'ask, headers', keysOf(headerForm)],
    ['readings', 'readings', keysOf(readingForm)],
    ['uncertainty', 'uncertainty', keysOf(uncertaintyForm)],
    ['families', 'The catalog', keysOf(familyForm).filter((key) => key !== 'fans')],
    ['fans', 'The catalog', keysOf(fanForm)],
    ['stock', 'Stock', keysOf(stockForm).filter((key) => key !== 'items')],
    ['items of stock', 'Stock', keysOf(formAt(stockForm.shape.items, [0], undefined))],
    ['ratings', 'The catalog', keysOf(formAt(fanForm.shape.noise, [0], undefined))],
  ];

  it.each(cases)('of %s are told in "%s"', (_, heading, keys) => {
    const named = namedIn(sectionOf(readme, heading));
    expect(keys.length).toBeGreaterThan(0);
    expect(keys.filter((key) => !named.has(key))).toEqual([]);
  });
});

describe('the kinds of elements', () => {
  const paragraphs = sectionOf(readme, 'elements').split(/^- (?=\*\*`)/m);
  const textFor = (key: string) => paragraphs.find((text) => text.startsWith(`**\`${key}\`**`)) ?? '';

  it.each(elementKinds.map((kind) => [kind.key, kind] as const))(
    '%s is told with its fields',
    (key, kind) => {
      const named = namedIn(textFor(key));
      expect(keysOf(kind.form).filter((field) => !named.has(field))).toEqual([]);
    },
  );

  it.each(elementKinds.map((kind) => [kind.key, kind] as const))(
    '%s has examples that are read',
    (key, kind) => {
      const examples = codeIn(textFor(key)).filter((code) => code.startsWith('{'));
      expect(examples.length).toBeGreaterThan(0);
      for (const example of examples) expect(() => kind.make(load(example))).not.toThrow();
    },
  );

  it('are these and no others', () => {
    const told = paragraphs.slice(1).map((text) => /^\*\*`([\w-]+)`/.exec(text)?.[1]);
    expect(told.toSorted()).toEqual(['bank', ...elementKinds.map(({ key }) => key)].toSorted());
  });

  it('have words that are told', () => {
    const words = (key: string, field: string): readonly string[] => {
      const kind = elementKinds.find((one) => one.key === key);
      const form = formAt(kind?.form, [field], undefined) as z.ZodType | undefined;
      return [...(form?._zod.values ?? [])].map(String);
    };
    const fields = [
      ['perforated', 'shape'],
      ['perforated', 'pattern'],
      ['perforated', 'facing'],
      ['duct', 'entry'],
      ['duct', 'exit'],
    ] as const;
    for (const [key, field] of fields) {
      expect(words(key, field).length).toBeGreaterThan(1);
      for (const word of words(key, field)) expect(textFor(key)).toMatch(new RegExp(`\\b${word}\\b`));
    }
  });
});

describe('the assumptions', () => {
  const section = sectionOf(readme, 'assume');
  const dashed = (name: string) => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  const groups = Object.entries(ASSUMPTIONS).map(
    ([group, values]) => [group, Object.entries(values)] as const,
  );

  it.each(groups)('of the group %s are all told', (group, values) => {
    const named = namedIn(section);
    expect(named.has(group)).toBe(true);
    expect(values.map(([name]) => dashed(name)).filter((name) => !named.has(name))).toEqual([]);
  });

  it('have the defaults that are told', () => {
    const told = new Map(rowsOf(section).map(([name = '', value = '']) => [name.replaceAll('`', ''), value]));
    const plainNumbers = groups.flatMap(([, values]) =>
      values.filter(([, value]) => typeof value === 'number'),
    );
    const wrong = plainNumbers.filter(([name, value]) => {
      const cell = told.get(dashed(name));
      return cell !== undefined && cell !== String(value);
    });
    expect(plainNumbers.length).toBeGreaterThan(10);
    expect(wrong).toEqual([]);
  });
});

describe('the units', () => {
  const rows = rowsOf(sectionOf(readme, 'Units')).slice(1);

  it.each(rows.map(([noun = '', units = '']) => [noun, units] as const))(
    'of %s are those that are read',
    (noun, units) => {
      const [name] = Object.entries(kinds).find(([, kind]) => kind.noun === noun) ?? [];
      const told = codeIn(units).filter((code) => !/\d [a-z]/.test(code));
      const kind = name as keyof typeof kinds;
      expect(told.filter((unit) => !readQuantity(kind, `1 ${unit}`).ok)).toEqual([]);
      expect(kinds[kind].units.map((unit) => unit.name).filter((unit) => !told.includes(unit))).toEqual([]);
    },
  );

  it('are many', () => {
    expect(rows.length).toBeGreaterThan(12);
  });
});
