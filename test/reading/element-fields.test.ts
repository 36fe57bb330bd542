import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { elementKind } from '../../src/elements/element.ts';
import { elementKinds } from '../../src/elements/kinds.ts';
import { makeElement, readKind } from '../../src/reading/element-fields.ts';
import type { Findings } from '../../src/reading/findings.ts';

const sound = { viscous: 1, inertial: 1, faint: 0, lossUncertainty: 0.1, remarks: [] };

function madeOf(inertial: number) {
  const form = z.strictObject({ trial: z.string() });
  const kind = elementKind({
    key: 'trial',
    summary: '',
    source: '',
    form,
    build: () => ({ ...sound, inertial }),
  });
  const findings: Findings = [];
  const element = makeElement(kind, { trial: 'x' }, (path) => ['elements', 'trial', ...path], findings);
  return { element, findings };
}

describe('an element from its fields', () => {
  it('is what its kind makes', () => {
    expect(madeOf(2)).toMatchObject({ element: { inertial: 2 }, findings: [] });
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, -1])('is refused if its loss is %d', (inertial) => {
    expect(madeOf(inertial)).toMatchObject({
      element: undefined,
      findings: [
        {
          code: 'out-of-range',
          path: ['elements', 'trial'],
          message: 'these figures are out of all proportion: no loss can be computed from them',
        },
      ],
    });
  });

  it('does not hide a fault of the program', () => {
    const broken = elementKind({
      key: 'broken',
      summary: '',
      source: '',
      form: z.unknown(),
      build: () => {
        throw new TypeError('a fault');
      },
    });
    expect(() => makeElement(broken, {}, (path) => path, [])).toThrow('a fault');
  });
});

describe('the kind of an element', () => {
  it.each(elementKinds.map(({ key }) => key))('is told by the key "%s"', (key) => {
    const findings: Findings = [];
    expect(readKind({ [key]: '1 x 1 mm' }, [], findings)?.kind?.key).toBe(key);
    expect(findings).toEqual([]);
  });

  it('is a bank where the key says so', () => {
    expect(readKind({ bank: 'fans' }, [], [])).toEqual({ kind: undefined, fields: { bank: 'fans' } });
  });
});
