import { describe, expect, it } from 'vitest';
import { type SupplyQuestion, supplyCheck } from '../../src/questions/supply-check.ts';
import { hushwright, written } from '../commands/program.ts';
import { changed, FANS, TWO_FANS } from '../scenarios/two-fans.ts';

const GIVEN = ['--wall', '300 W', '--efficiency', '77 %', '--rating', '330 W'];

const QUESTION: SupplyQuestion = {
  wall: 300,
  efficiency: { kind: 'number', efficiency: 0.77 },
  rating: 330,
  inside: true,
  useful: 0,
  fans: [],
  peak: { factor: 1, duration: 0.1 },
  kind: 'none',
};

describe('300 W at the wall, 77 %, a supply of 330 W', () => {
  it('deliver 231 W and leave 99 W, 30 %', () => {
    const run = hushwright(['supply', '--json', ...GIVEN, '--fans', '6 W', '--peak', '1.4']);
    // The peak is a watt more than the supply may give: not adequate.
    expect(run.code).toBe(1);
    const { result } = JSON.parse(run.out);
    // Definition of the efficiency: 300 · 0.77 = 231, not 300 / 0.77 = 390.
    expect(result).toMatchObject({ delivered_W: 231, lost_W: 69, heatInside_W: 300, heatOtherwise_W: 231 });
    // What is left: 330 - 231 = 99 W, 99 / 330 = 0.3.
    expect(result.sustained).toMatchObject({ spare_W: 99, share: 0.3, verdict: 'pass' });
    // All fans starting take 1.5 times their power more (assumption: 2.5 times in all); the peak comes on top.
    expect(result.starting.load_W).toBeCloseTo(231 + 9, 6);
    expect(result.peak.headroom.load_W).toBeCloseTo(1.4 * 231 + 9, 6);
    expect(result.verdict).toBe('fail');
  });

  it('heat the box with 231 W where the supply stands outside', () => {
    const run = hushwright(['supply', ...GIVEN, '--outside']);
    // As above: 300 · 0.77 = 231 W, and 330 less that are 99 W, 30 % of 330.
    expect(run.out).toContain('Heat in the box with the supply outside: 231.0 W; with it inside: 300.0 W.');
    expect(run.out).toMatch(/for long +231\.0 +330\.0 +99\.0 +30 +pass/);
  });
});

describe('the verdict', () => {
  it.each([
    [330, 'pass'],
    // 231 W over 0.8 is the least rating that leaves a fifth.
    [289, 'pass'],
    [288, 'tight'],
    [232, 'tight'],
    [230, 'fail'],
  ])('on a supply of %d W is %s', (rating, verdict) => {
    expect(supplyCheck({ ...QUESTION, rating }).verdict).toBe(verdict);
  });

  it('never leaves more heat than the wall gives', () => {
    const { heatInside, heatOtherwise, state } = supplyCheck({ ...QUESTION, useful: 40 });
    // Energy balance: what the wall gives is heat, loss of the supply included, but for the 40 W that leave.
    expect(heatInside).toBeCloseTo(300 - 40, 9);
    expect(heatInside - heatOtherwise).toBeCloseTo(state.loss, 9);
  });
});

describe('the supply of a scenario', () => {
  const fed = changed(TWO_FANS, {
    'heat:\n':
      'heat:\n  - { part: supply, in: box, wall: { reading: 60 W, efficiency: 90 %, rating: 80 W } }\n',
    'power: 0.001 W': 'power: 54 W',
  });

  it('is asked with the fans of a build', () => {
    const run = hushwright([
      'supply',
      written('box.yaml', fed),
      '--build',
      'as-drawn',
      '--catalog',
      written('fans.yaml', FANS),
      '--json',
    ]);
    expect(run.code).toBe(0);
    expect(JSON.parse(run.out).result).toMatchObject({
      wall_W: 60,
      delivered_W: 54,
      rating_W: 80,
      verdict: 'pass',
    });
  });

  it('is missed where there is none, and what is missing is told', () => {
    expect(hushwright(['supply', 'scenarios/shelf-charger.yaml']).code).toBe(2);
    expect(hushwright(['supply', '--wall', '300 W']).err).toContain('--rating');
  });
});
