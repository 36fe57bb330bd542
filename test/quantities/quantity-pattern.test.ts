import { describe, expect, it } from 'vitest';
import { readArea, readList, readRectangle } from '../../src/quantities/lists.ts';
import { AREA, listSpelling, quantitySpelling, RECTANGLE } from '../../src/quantities/quantity-pattern.ts';
import { type KindName, kinds, type Unit } from '../../src/quantities/unit-table.ts';
import { readQuantity } from '../../src/quantities/units.ts';
import { seededBelow } from '../reading/random-document.ts';

const names = Object.keys(kinds) as KindName[];
const spellings = names.flatMap((kind) => {
  const units: readonly Unit[] = kinds[kind].units;
  return units.flatMap(({ name, also = [] }) => [name, ...also]);
});

/** Texts that are quantities, and texts that nearly are. */
function texts(count: number, seed: number): readonly string[] {
  const below = seededBelow(seed);
  const pick = (from: readonly string[]): string => from[below(from.length)] ?? '';
  const numbers = [
    '12',
    '-3.5',
    '0',
    '.5',
    '5.',
    '1e3',
    '2E-4',
    '−7',
    '+1',
    '1,5',
    '0x10',
    '',
    '1 2',
    '1_000',
  ];
  return Array.from({ length: count }, () => {
    const unit = pick(spellings);
    const odd = [
      unit,
      unit.toUpperCase(),
      unit.replaceAll('', ' ').trim(),
      unit.replace('³', '^3').replace('²', '^2'),
      unit.replace(' ', '·'),
      `${unit}x`,
      '',
    ];
    return `${pick(['', ' '])}${pick(numbers)}${pick(['', ' ', '  '])}${pick(odd)}${pick(['', ' '])}`;
  });
}

// The reader is the other side: it goes through the text letter by letter, with tables and without these patterns.
describe('patterns of written quantities', () => {
  it.each(names)('take what the reader takes, and nothing else: %s', (kind) => {
    const one = new RegExp(quantitySpelling(kind).pattern, 'u');
    const list = new RegExp(listSpelling(kind).pattern, 'u');
    for (const text of texts(3000, names.indexOf(kind) + 1)) {
      const sized = text.replace('1e3', '1').replace('2E-4', '2');
      expect(one.test(text), text).toBe(readQuantity(kind, sized).ok);
      // A list may have one number only.
      if (one.test(text)) expect(list.test(text), text).toBe(true);
    }
    for (const { name } of kinds[kind].units as readonly Unit[]) {
      const text = `0 1.5, 2e1 ${name}`;
      expect(list.test(text), text).toBe(readList(kind, text).ok);
    }
  });

  it('take every spelling of every unit', () => {
    for (const kind of names) {
      for (const { name, also = [] } of kinds[kind].units as readonly Unit[]) {
        for (const spelling of [name, ...also]) {
          expect(new RegExp(quantitySpelling(kind).pattern, 'u').test(`3 ${spelling}`), spelling).toBe(true);
        }
      }
    }
  });

  it.each([
    '95 x 80 mm',
    '95x80mm',
    '95 mm',
    '9 cm × 80 mm',
    '95 * 80 mm',
    '95 x 80',
    '95 x 80 x 3 mm',
    'x 80 mm',
    '95 x mm',
  ])('of rectangles and areas: %s', (text) => {
    expect(new RegExp(RECTANGLE.pattern, 'u').test(text)).toBe(readRectangle(text).ok);
    expect(new RegExp(AREA.pattern, 'u').test(`${text}`) || text === '95 mm').toBe(
      readArea(text).ok || text === '95 mm',
    );
  });
});
