import { describe, expect, it } from 'vitest';
import { countHoles } from '../../src/elements/hole-pattern.ts';
import { perforated } from '../../src/elements/perforated.ts';
import { patternOf, readPerforatedSheet } from '../../src/elements/perforated-sheet.ts';
import { orificeLoss } from '../../src/elements/thick-orifice.ts';
import { lossOf, off, problemsOf } from './loss-of.ts';

const front = { perforated: '95 x 95 mm', hole: '4 mm', web: '1.5 mm', sheet: '1.5 mm' };

describe('a perforated sheet', () => {
  it('opens what its whole holes open', () => {
    // Derived: pitch 5.5 mm, rows 4.763 mm apart: 20 rows, 17 and 17 holes in turn (91/5.5 = 16.5, 88.25/5.5 = 16.05).
    const element = perforated.make(front);
    expect(off(element.freeArea ?? 0, (340 * Math.PI * 0.004 ** 2) / 4)).toBeLessThan(1e-12);
    expect(off(element.ventFace ?? 0, 0.095 ** 2)).toBeLessThan(1e-12);
    expect(element.disturbance).toBe('panel');
    const sheet = readPerforatedSheet(front);
    expect(countHoles(patternOf(sheet), sheet.perforated)).toBe(340);
  });

  it('counts as narrow before, behind, on both or on no sides by where it faces', () => {
    const free = 340 * (Math.PI / 4) * 0.004 ** 2;
    const open = free / 0.095 ** 2;
    const shares = { vent: [open, 0], shroud: [0, open], duct: [open, open], wall: [0, 0] } as const;
    for (const [facing, [before, behind]] of Object.entries(shares)) {
      const { inertial } = perforated.make({ ...front, facing });
      expect(off(inertial * 2 * free ** 2, orificeLoss(before, behind, 1.5 / 4))).toBeLessThan(1e-12);
    }
    expect(perforated.make(front).inertial).toBe(perforated.make({ ...front, facing: 'vent' }).inertial);
  });

  it('loses at low flow what creeping through the holes and along their walls takes', () => {
    // Derived: (12π + 64·l)·µ·Q/(2·d·A), Sampson and Poiseuille.
    const element = perforated.make(front);
    const expected = ((12 * Math.PI + 64 * 0.375) * 1.81e-5) / (2 * 0.004 * (element.freeArea ?? 0));
    expect(off(lossOf(element, 1e-12) / 1e-12, expected)).toBeLessThan(1e-5);
  });

  it('says so when the field holds fewer holes than the pattern promises, and when it is hard to make', () => {
    const [edge] = perforated.make({ ...front, perforated: '30 x 30 mm' }).remarks;
    expect(edge).toContain('whole holes fit');
    const thin = perforated.make({ ...front, web: '1 mm', sheet: '2 mm' }).remarks;
    expect(thin.at(-1)).toContain('hard to cut');
    expect(perforated.make({ ...front, perforated: '1 x 1 m' }).remarks).toEqual([]);
  });

  it('refuses what cannot be made, at the field to blame', () => {
    expect(problemsOf(perforated, { ...front, perforated: '3 x 95 mm' }).join()).toMatch(
      /^perforated: .*whole hole/,
    );
    expect(problemsOf(perforated, { ...front, shape: 'slot' }).join()).toMatch(/^slot-length: found nothing/);
    expect(problemsOf(perforated, { ...front, 'slot-length': '20 mm' }).join()).toMatch(
      /^slot-length: .*round/,
    );
    const stub = { ...front, shape: 'slot', 'slot-length': '3 mm' };
    expect(problemsOf(perforated, stub).join()).toMatch(/^slot-length: .*shorter/);
    expect(problemsOf(perforated, { ...front, web: '-1 mm' }).join()).toMatch(/^web: .*more than 0/);
    expect(problemsOf(perforated, { ...front, facing: 'north' }).join()).toContain('facing');
  });
});
