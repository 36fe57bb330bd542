import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { hushwright, scenarioText } from './program.ts';

const asked = `${scenarioText('open-amplifier')}
builds:
  first-try: { push: f120-25-e, pull: p120-25-d }
ask: { price: 29.5 }
`;

const found = z.object({
  result: z.object({
    by: z.object({ goal: z.string(), levelCap_dBA: z.number().nullable() }),
    count: z.object({
      space: z.number(),
      solved: z.number(),
      ruledOut: z.array(z.object({ bound: z.string(), builds: z.number() })),
    }),
    rows: z.array(
      z.object({ outcome: z.object({ level_dBA: z.number(), build: z.object({ price: z.number() }) }) }),
    ),
    why: z.object({ build: z.string() }).nullable(),
  }),
});

describe('what is asked beside the limits', () => {
  it('puts builds out, counted by reason, in the order of what they cost', () => {
    const run = hushwright(
      ['rank', '-', '--by', 'price', '--level-cap', '11.25 dB(A)', '--why', 'first-try', '--json'],
      asked,
    );
    const { result } = found.parse(JSON.parse(run.out));
    const costs = result.rows.map(({ outcome }) => outcome.build.price);
    const out = result.count.ruledOut;
    expect(result.by).toMatchObject({ goal: 'price', levelCap_dBA: 11.25 });
    expect(costs.length).toBeGreaterThan(0);
    expect(costs).toEqual(costs.toSorted((one, other) => one - other));
    expect(Math.max(...costs)).toBeLessThanOrEqual(29.5);
    expect(Math.max(...result.rows.map(({ outcome }) => outcome.level_dBA))).toBeLessThanOrEqual(11.25);
    expect(out.find(({ bound }) => bound === 'dearer than asked')?.builds).toBeGreaterThan(0);
    expect(result.count.solved + out.reduce((sum, { builds }) => sum + builds, 0)).toBe(result.count.space);
    expect(result.why?.build).toBe('first-try');
  });

  it.each([
    [['--level-cap', '45'], 'found 45 without a unit'],
    [['--front', 'price', '--by', 'power'], '--front goes by a level'],
    [['--front', 'price', '--front-step', '1 K'], '--front-step goes with --front margin only'],
    [['--by-duty', 'nap'], 'has no duty "nap"'],
    [['--why', 'frist-try'], 'did you mean "first-try"?'],
  ])('is refused where it makes no sense: %s', (words, says) => {
    const run = hushwright(['rank', '-', ...words], asked);
    expect(run.code).toBe(2);
    expect(run.err).toContain(says);
  });
});
