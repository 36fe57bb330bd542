import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { nextCsv } from '../../src/presentation/next/next-csv.ts';
import { nextSections, wouldDoSentences } from '../../src/presentation/next/next-view.ts';
import { plain } from '../../src/presentation/paint.ts';
import type { NextChange, WhatNext } from '../../src/questions/what-next.ts';
import { build } from './sample-outcomes.ts';

const change: NextChange = {
  lever: 'larger fan',
  eases: 'by flow',
  isFan: true,
  effort: 'make room',
  at: 'pull',
  what: 'q120-15-c x1 for s92-15-e x1',
  notes: ['needs a face of 120 mm, there are 92 mm.'],
  adequate: true,
  level: 19.6,
  quieter: 2.8,
  cooler: 1.8,
  price: 10,
  power: -0.3,
  depth: 0,
};
const contact: NextChange = {
  ...change,
  lever: 'better contact',
  eases: 'by contact',
  isFan: false,
  at: 'processor',
  what: '50 % of what lies between it and the fins',
  notes: [],
  quieter: 0.6,
  price: 0,
  power: 0,
  depth: 0.022,
};

function shown(next: Partial<WhatNext>, width?: number): readonly string[] {
  const all = { changes: [change, contact], tried: 12, flowShare: 0.6, fansHeldBack: false, ...next };
  return nextSections(build(), all, { paint: plain, width }).flat();
}

// Reference: RFC 4180, read back by splitting at its own separators.
describe('what to change next as comma-separated values', () => {
  it('has a line a change, in SI, and the heads alone where nothing was tried', () => {
    const next = { changes: [change, contact], tried: 12, flowShare: 0.6, fansHeldBack: false };
    const [heads = '', first = '', second = '', ...rest] = nextCsv(next).split('\r\n');
    expect(heads.split(',')).toHaveLength(first.split(',').length);
    expect(first).toBe('larger fan,pull,q120-15-c x1 for s92-15-e x1,1.8,2.8,19.6,true,10,-0.3,0');
    expect(second.split(',').at(-1)).toBe('0.022');
    expect(rest).toEqual(['']);
    expect(nextCsv(undefined)).toBe(`${heads}\r\n`);
  });
});

describe('what to change next', () => {
  it('shows gains, level then, price, power and depth of each change', () => {
    const text = shown({}).join('\n');
    expect(text).toMatch(/2\.8 +1\.8 +19\.6 +\+10 +-0\.3 +0 +larger fan, pull: q120/);
    expect(text).toMatch(/0\.6 +1\.8 +19\.6 +0 +0\.0 +\+22 +better contact, processor/);
  });

  it('leaves out columns in which there is nothing', () => {
    const text = shown({ changes: [{ ...change, power: 0 }] }).join('\n');
    expect(text).not.toContain('Power');
    expect(text).not.toContain('Depth');
  });

  it.each([60, 80, 100])('is no wider than %i columns', (width) => {
    for (const line of shown({}, width)) expect(stringWidth(line)).toBeLessThanOrEqual(width);
  });

  it('says so if nothing helps, and if fans are held back', () => {
    expect(shown({ changes: [] }).join('\n')).toContain('None of the 12 changes tried helps.');
    expect(shown({ changes: [contact, change], fansHeldBack: true, flowShare: 0.25 }).join('\n')).toContain(
      'Only 25 % of that rise depends on flow: more fan is not what to begin with.',
    );
  });
});

describe('the cheapest single change', () => {
  it('is told with its level and price', () => {
    const [first, second] = wouldDoSentences({ change, tried: 12 });
    expect(first).toBe(
      'The cheapest single change that would do: larger fan, pull: q120-15-c x1 for s92-15-e x1; 19.6 dB(A) then, price +10.',
    );
    expect(second).toBe('Needs a face of 120 mm, there are 92 mm.');
  });

  it('may not exist', () => {
    expect(wouldDoSentences({ tried: 30 })).toEqual(['None of the 30 single changes tried would do.']);
  });
});
