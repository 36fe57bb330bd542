import { describe, expect, it } from 'vitest';
import { changed, FANS, TWO_FANS } from '../scenarios/two-fans.ts';
import { hushwright, written } from './program.ts';

const catalog = written('fans.yaml', FANS);

/** What `solve` says of the two fans at 1300 rpm. */
function solved(scenario: string, ...more: readonly string[]) {
  const file = written('box.yaml', scenario);
  const run = hushwright([
    'solve',
    file,
    '--build',
    'as-drawn',
    '--speed',
    '65',
    '--catalog',
    catalog,
    // The fan is made up for round figures, which `check` finds odd.
    '-q',
    ...more,
  ]);
  expect(run.err).toBe('');
  expect(run.code).toBe(0);
  return run.out;
}

function levelOf(scenario: string): number {
  const { result } = JSON.parse(solved(scenario, '--json'));
  return result.outcome.level_dBA;
}

describe('solve', () => {
  it('gives the sum of two fans, a stack and a vent at 0.7 m and at 1 m', () => {
    // Computed with Python term by term from the laws of the sound model; see test/scenarios/sound.test.ts.
    expect(Math.abs(levelOf(TWO_FANS) - 30.638)).toBeLessThan(0.005);
    const metre = changed(TWO_FANS, { 'distance: 0.7 m': 'distance: 1 m' });
    expect(Math.abs(levelOf(metre) - 27.54)).toBeLessThan(0.005);
  });

  it('says whether it is heard only against a background', () => {
    expect(solved(TWO_FANS)).not.toMatch(/audible|masked/);
    const night = changed(TWO_FANS, { 'distance: 0.7 m': 'distance: 0.7 m, background: 30 dB(A)' });
    expect(solved(night)).toMatch(/Against the stated background of 30\.0 dB\(A\): audible.*33\.3 together/);
  });

  it('tells tones, beats and what would end them', () => {
    const text = solved(TWO_FANS);
    expect(text).toMatch(/^pair +152 +3 {2}high/m);
    expect(text).toContain('The fans of pair may beat, 4.6 to 15.2 Hz');
    expect(text).toContain('Hold them within 2.6 rpm of each other');
  });
});
