import { describe, expect, it } from 'vitest';
import type { KindName } from '../../src/quantities/unit-table.ts';
import { readQuantity } from '../../src/quantities/units.ts';

function misfitOf(kind: KindName, text: string) {
  const outcome = readQuantity(kind, text);
  return outcome.ok ? undefined : outcome.misfit;
}

describe('misfits', () => {
  it.each([
    ['a bare number', 'length', '120', '120 mm', /without a unit/],
    ['a misspelt unit', 'flow', '40 CFN', '40 CFM', /no unit "CFN"/],
    ['a decimal comma', 'length', '1,2 mm', '1.2 mm', /comma/],
    ['a comma that may part thousands', 'speed', '1,200 rpm', '1.200 rpm or 1200 rpm', /comma/],
    ['a level without its weighting', 'level', '23 dB', '23 dB(A)', /a level difference/],
    ['a difference with a weighting', 'decibel', '2 dB(A)', '2 dB', /a sound level/],
    ['a missing degree sign', 'temperature', '26 C', '26 °C', /no unit "C"/],
  ] as const)('%s', (_, kind, text, suggestion, found) => {
    expect(misfitOf(kind, text)).toMatchObject({ suggestion, found: expect.stringMatching(found) });
  });

  it.each([
    ['another kind of quantity', 'flow', '12 mm', /12 mm, a length/, /a flow such as/],
    ['two numbers', 'length', '1 2 mm', /1 2 mm/, /one number/],
    ['no number', 'length', 'wide', /wide/, /a length such as 120 mm/],
    ['nothing', 'length', '', /^$/, /a length such as 120 mm/],
    ['not a number', 'length', 'NaN mm', /NaN/, /a length/],
    ['infinity', 'length', 'Infinity mm', /Infinity/, /a length/],
    ['a number beyond all bounds', 'length', '1e999 mm', /1e999/, /reasonable/],
    ['a number too large to be squared', 'length', '1e16 m', /1e16/, /reasonable/],
    ['a number too small to be squared', 'length', '1e-16 m', /1e-16/, /reasonable/],
    ['hexadecimal', 'length', '0x10 mm', /x10 mm/, /a length/],
  ] as const)('%s', (_, kind, text, found, expected) => {
    expect(misfitOf(kind, text)).toMatchObject({
      found: expect.stringMatching(found),
      expected: expect.stringMatching(expected),
    });
    expect(misfitOf(kind, text)).not.toHaveProperty('suggestion');
  });

  it('cuts a page of text in the place of a number', () => {
    expect(misfitOf('length', '9'.repeat(5_000_000))?.found.length).toBeLessThan(100);
  });
});
