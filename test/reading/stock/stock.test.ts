import { describe, expect, it } from 'vitest';
import type { Element } from '../../../src/elements/element.ts';
import { elementKinds } from '../../../src/elements/kinds.ts';
import { readCatalogs } from '../../../src/reading/catalog-file.ts';
import type { Problem } from '../../../src/reading/problem.ts';
import { readScenario } from '../../../src/reading/scenario-file.ts';
import { scenarioFiles, shippedFans, shippedStock } from '../../scenarios/shipped.ts';
import { changed, unmarked } from '../marked.ts';

const base = scenarioFiles.find(({ file }) => file === 'wall-cabinet.yaml')?.text ?? '';
const VENT = 'bottom-vent: { perforated: 200 x 60 mm, hole: 5 mm, web: 2 mm, sheet: 1.2 mm }';
const CHOICE = '  bottom-vent: { hole: [3 mm, 4 mm, 5 mm, 6 mm], web: [1.5 mm, 2.5 mm, 4 mm] }\n';

function read(text: string) {
  return readScenario('cabinet.yaml', text, shippedFans, shippedStock);
}

/** The cabinet with another sheet at its bottom, and with a choice of it or none. */
function cabinet(vent: string, choice = ''): string {
  return changed(changed(base, VENT, `bottom-vent: ${vent}`), CHOICE, choice);
}

function optionsOf(text: string) {
  const outcome = read(text);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
  return outcome.enclosure.places.find(({ id }) => id === 'bottom-vent')?.options ?? [];
}

/** What can be told of an element without its functions. */
function figuresOf(element: Element) {
  const { viscous, inertial, faint, freeArea, face, disturbance, remarks } = element;
  return { viscous, inertial, faint, freeArea, face, disturbance, remarks };
}

describe('an element that calls for stock', () => {
  it('is the element with the fields of the item written out', () => {
    const [called] = optionsOf(cabinet('{ perforated: 200 x 60 mm, stock: R5T8, sheet: 1 mm }'));
    const [written] = optionsOf(cabinet('{ perforated: 200 x 60 mm, hole: 5 mm, web: 3 mm, sheet: 1 mm }'));
    if (!called || !written || !('element' in called) || !('element' in written))
      throw new Error('no element');
    expect(figuresOf(called.element)).toEqual(figuresOf(written.element));
  });

  it('may stand in a choice, with values of other fields beside it', () => {
    const options = optionsOf(
      cabinet(
        '{ perforated: 200 x 60 mm, stock: R5T8, sheet: 1 mm }',
        '  bottom-vent: { stock: [R3T5, R5T8], sheet: [1 mm, 1.5 mm] }\n',
      ),
    );
    expect(options.map((option) => (option && 'label' in option ? option.label : ''))).toEqual([
      'stock R3T5, sheet 1 mm',
      'stock R3T5, sheet 1.5 mm',
      'stock R5T8, sheet 1 mm',
      'stock R5T8, sheet 1.5 mm',
    ]);
  });

  it('may be one of whole elements, and is then told by the item', () => {
    const options = optionsOf(
      cabinet(
        '{ passage: 200 x 60 mm }',
        '  bottom-vent:\n    element:\n      - { screen: 200 x 60 mm, stock: insect-16 }\n      - { passage: 200 x 60 mm }\n',
      ),
    );
    expect(options.map((option) => (option && 'label' in option ? option.label : ''))).toEqual([
      'stock insect-16',
      'passage 200 x 60 mm',
    ]);
  });

  it.each([
    [
      'an unknown item',
      '{ perforated: 200 x 60 mm, stock: ¦R5T88, sheet: 1 mm }',
      'there is no stock of "perforated" "R5T88"',
    ],
    [
      'an item of another kind',
      '{ perforated: 200 x 60 mm, stock: ¦insect-16, sheet: 1 mm }',
      '"insect-16" is no "perforated" but a "screen"',
    ],
    [
      'a field the item settles',
      '{ perforated: 200 x 60 mm, stock: R5T8, ¦hole: 4 mm, sheet: 1 mm }',
      '"hole" of "R5T8" is 5 mm',
    ],
  ])('is refused with %s', (_, vent, message) => {
    const { text, places } = unmarked(cabinet(vent));
    const outcome = read(text);
    const [problem, ...more] = outcome.ok ? [] : outcome.problems;
    expect(more).toEqual([]);
    expect(problem?.message).toBe(message);
    expect([problem?.line, problem?.column]).toEqual([...(places[0] ?? [])]);
    expect(problem?.suggestion).toBe(message.includes('R5T88') ? 'R5T8' : undefined);
  });

  // What lacks is shown at the key of the element, which stands before its value.
  it.each([
    ['no kind', '{ stock: R5T8, sheet: 1 mm }', 'nothing tells what kind of element this is'],
    ['a field that neither has', '{ perforated: 200 x 60 mm, stock: R5T8 }', '"sheet" is missing'],
  ])('is refused with %s', (_, vent, message) => {
    const { text, places } = unmarked(changed(cabinet(vent), 'bottom-vent: {', '¦bottom-vent: {'));
    const outcome = read(text);
    const [problem] = outcome.ok ? [] : outcome.problems;
    expect(problem?.message).toBe(message);
    expect([problem?.line, problem?.column]).toEqual([...(places[0] ?? [])]);
  });
});

describe('the shipped stock', () => {
  it('names its source and has items of kinds that exist, no two of one name', () => {
    expect(new Set(shippedStock.map(({ id }) => id)).size).toBe(shippedStock.length);
    for (const { id, kind, source } of shippedStock) {
      expect(
        elementKinds.map(({ key }) => key),
        id,
      ).toContain(kind);
      expect(source.length, id).toBeGreaterThan(20);
    }
    expect(new Set(shippedStock.map(({ kind }) => kind))).toEqual(
      new Set(['perforated', 'screen', 'filter', 'guard', 'fins']),
    );
  });

  // From memory: tables of the perforated plate trade after ISO 7806 and DIN 24041, open area in per cent.
  it.each([
    ['R2T3.5', 29.6],
    ['R3T5', 32.6],
    ['R4T6', 40.3],
    ['R5T8', 35.4],
    ['R10T15', 40.3],
    ['R5U8', 30.7],
    ['C5U8', 39.1],
    ['C10U15', 44.4],
  ])('is as open as tables of the trade say: %s', (id, percent) => {
    const item = shippedStock.find((each) => each.id === id);
    const kind = elementKinds.find(({ key }) => key === 'perforated');
    const element = kind?.make({ ...item?.fields, perforated: '2 m', sheet: '1 mm' });
    const open = (100 * (element?.freeArea ?? 0)) / (element?.face ?? 1);
    // Holes cut by the edge are left out of a real field.
    expect(open).toBeGreaterThan(percent - 0.5);
    expect(open).toBeLessThan(percent + 0.1);
  });

  // From memory: ISO 9044, open area of a square mesh (w/(w + d))², rounded; 16 and 18 wires an inch by plane geometry.
  it.each([
    ['W1-0.4', 51],
    ['W2-0.56', 61],
    ['W0.5-0.25', 44.4],
    ['insect-16', 67.8],
    ['insect-18', 70.1],
  ])('has meshes as open as their geometry: %s', (id, percent) => {
    const item = shippedStock.find((each) => each.id === id);
    const element = elementKinds
      .find(({ key }) => key === 'screen')
      ?.make({ ...item?.fields, screen: '1 m' });
    expect((100 * (element?.freeArea ?? 0)) / (element?.face ?? 1)).toBeCloseTo(percent, 0);
  });
});

describe('a file of stock', () => {
  const GOOD =
    'stock: sheets\nsource: drawn up for this test\nkind: perforated\nitems:\n  - { item: P1, hole: 4 mm, web: 2 mm, open-area: 40 % }\n';
  const problemsIn = (text: string): readonly Problem[] => {
    const outcome = readCatalogs([{ file: 'sheets.yaml', text }]);
    return outcome.ok ? [] : outcome.problems;
  };

  it('is read beside families of fans', () => {
    const outcome = readCatalogs([{ file: 'sheets.yaml', text: GOOD }]);
    expect(outcome).toMatchObject({ ok: true, fans: [], stock: [{ id: 'P1', kind: 'perforated' }] });
  });

  it.each([
    [
      'a kind there is not',
      'kind: perforated',
      'kind: ¦perforate',
      { code: 'wrong-value', suggestion: 'perforated' },
    ],
    ['no source', 'source: drawn up for this test\n', '', { code: 'missing-key' }],
    ['a field the kind has not', 'web: 2 mm', '¦wire: 2 mm', { code: 'unknown-key' }],
    ['a field that cannot be read', 'hole: 4 mm', 'hole: ¦4 W', { code: 'wrong-value' }],
    [
      'an open area that is not that of the geometry',
      '40 %',
      '¦60 %',
      { message: 'this is not the open area of the geometry beside it' },
    ],
    ['a name with a space', 'item: P1', 'item: ¦P 1', { code: 'wrong-value' }],
    [
      'a name that stands twice',
      '40 % }\n',
      '40 % }\n  - { item: ¦P1, hole: 4 mm, web: 2 mm }\n',
      { code: 'duplicate-name' },
    ],
    ['an open area of nothing', '40 %', '¦0 %', { code: 'out-of-range' }],
    [
      'no items',
      '  - { item: P1, hole: 4 mm, web: 2 mm, open-area: 40 % }',
      '  ¦[]',
      { code: 'out-of-range' },
    ],
    ['an unknown key', 'kind:', '¦colour: red\nkind:', { code: 'unknown-key' }],
  ])('with %s', (_, from, to, expected) => {
    const { text, places } = unmarked(changed(GOOD, from, to));
    const [problem] = problemsIn(text);
    expect(problem).toMatchObject(expected);
    if (places[0]) expect([problem?.line, problem?.column]).toEqual([...places[0]]);
  });

  it('may not use a name of another file', () => {
    const outcome = readCatalogs([
      { file: 'a.yaml', text: GOOD },
      { file: 'b.yaml', text: GOOD },
    ]);
    const problems = outcome.ok ? [] : outcome.problems;
    expect(problems).toMatchObject([
      { file: 'b.yaml', line: 5, message: 'an item of a.yaml is called "P1" as well' },
    ]);
  });
});
