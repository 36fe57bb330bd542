import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { plain } from '../../../src/presentation/paint.ts';
import { ventView } from '../../../src/presentation/vent/vent-view.ts';
import { ventAnswer } from '../../../src/questions/vent/vent.ts';
import { ventTaskWith } from '../../questions/vent/vent-box.ts';

const task = ventTaskWith(
  { perforated: '120 x 60 mm', hole: '2 mm', web: '2 mm', sheet: '3 mm' },
  { keep: 0.5, process: 'drill', blades: 0.002, hole: 0.009 },
  60,
);
const answer = ventAnswer(task);
if (typeof answer === 'string') throw new Error(answer);
const shown = (width?: number): string =>
  ventView(answer, { title: 'A box', arrangement: 'fan exhausting', paint: plain, width });

// Outcomes made up for these tests; the words are those the README tells.
describe('an opening as text', () => {
  it.each([60, 80, 100])('is no wider than %i columns, but for the line of the scenario', (width) => {
    const lines = shown(width)
      .split('\n')
      .filter((line) => !line.startsWith('  vent: {'));
    expect(lines.length).toBeGreaterThan(30);
    for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(width);
  });

  it('marks the knee, the best pattern and what stands there in both plots', () => {
    expect(shown().match(/K knee {3}1 pattern 1 {3}N now/g)).toHaveLength(2);
  });

  it.each([80, 100])('tells bands of the best pattern and of what stands there, on %i columns', (width) => {
    const rows = shown(width).match(
      /^(pattern 1|opening as it is) +[\d.]+ to [\d.]+ +-?[\d.]+ to -?[\d.]+ +\d+ to \d+ dB\(A\) +.*%$/gm,
    );
    expect(rows?.map((row) => row.slice(0, 7))).toEqual(['pattern', 'opening']);
  });

  it('has dashes for bands where nothing settles', () => {
    const text = ventView(
      { ...answer, sure: { best: null, asItIs: null } },
      { title: 'A box', arrangement: 'fan exhausting', paint: plain },
    );
    expect(text).toMatch(/^pattern 1( +–){4}$/m);
    expect(text).not.toContain('Limits hold: how likely');
  });

  it('warns in words', () => {
    const text = shown();
    expect(text).toContain(
      'Pattern 1: fingers must be kept 20 mm from blades behind such holes, reckoned with are 2 mm.',
    );
    expect(text).toContain('As it stands: holes of 2 mm in a sheet of 3 mm: smaller than the sheet is thick');
    expect(text).toContain('As it stands: webs of 2 mm in a sheet of 3 mm: narrower than the sheet is thick');
  });
});
