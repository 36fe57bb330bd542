import { describe, expect, it } from 'vitest';
import type { BuildOutcome, DutyOutcome, PartOutcome } from '../../src/enclosure/outcome.ts';
import { HOPELESS } from '../../src/heat/part-temperature.ts';
import { riseTable } from '../../src/presentation/budget-tables.ts';
import { type Cell, linesOf } from '../../src/presentation/column.ts';
import { figure, quantity } from '../../src/presentation/figures.ts';
import { outcomeData } from '../../src/presentation/outcome-data.ts';
import { kelvinData, temperatureData } from '../../src/presentation/tellable.ts';
import { build } from './sample-outcomes.ts';

function beyond(part: PartOutcome, room: number): PartOutcome {
  return {
    ...part,
    temperature: HOPELESS,
    loopGain: Number(HOPELESS),
    rise: [{ label: 'air to fin base', amount: HOPELESS - room }],
    limits: part.limits.map((limit) => ({ ...limit, found: HOPELESS, margin: limit.limit - HOPELESS })),
  };
}

/** The sample build with parts that run away in hot air, as a pass leaves them: a sentinel everywhere. */
function runaway(): BuildOutcome {
  const outcome = build();
  const duties = outcome.duties.map((duty): DutyOutcome => {
    const chambers = duty.chambers.map((chamber) =>
      chamber.chamber === 'outside' ? chamber : { ...chamber, temperature: HOPELESS },
    );
    return { ...duty, chambers, parts: duty.parts.map((part) => beyond(part, duty.room)) };
  });
  return { ...outcome, reserve: -HOPELESS, duties };
}

describe('figures beyond all use', () => {
  it('are told as more than 700, whatever they are', () => {
    // Derived: 700 °C is 973.15 K.
    expect(figure('temperature', 973.14)).toBe('700.0');
    expect(figure('temperature', 973.15 + 1e-9)).toBe('> 700');
    expect(quantity('temperature', HOPELESS)).toBe('> 700 °C');
    expect(quantity('kelvins', HOPELESS)).toBe('> 700 K');
    expect(figure('kelvins', -HOPELESS)).toBe('< -700');
    expect(figure('kelvins', -699.9)).toBe('-699.9');
    expect(figure('kelvins', Number.POSITIVE_INFINITY)).toBe('–');
    expect(figure('flow', 1e6)).not.toContain('>');
  });

  it('are null as data', () => {
    expect(temperatureData(973.2)).toBeNull();
    expect(temperatureData(973.1)).toBe(973.1);
    expect(kelvinData(-700)).toBeNull();
    expect(kelvinData(-699.9)).toBe(-699.9);
    // An infinite reserve is told by the document itself, with a warning.
    expect(kelvinData(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
  });

  it('leave no sentinel in the data of a build', () => {
    const text = JSON.stringify(outcomeData(runaway()));
    expect(text.match(/(?<![\d.])\d{6,}/g) ?? []).toEqual([]);
    expect(text).toContain('"temperature_K":null');
    expect(text).toContain('"margin_K":null');
    expect(text).toContain('"loopGain":null');
    expect(text).toContain('"reserve_K":null');
  });

  it('are one step of words in the table of rises, with bars that match', () => {
    const [duty] = runaway().duties as [DutyOutcome, ...DutyOutcome[]];
    const [names, labels, amounts, bars] = riseTable(duty).map(({ cells }) => cells);
    const lines = (cells: readonly Cell[] | undefined) => linesOf(cells?.[0] ?? '').length;
    expect(JSON.stringify(names)).toContain('runs away');
    expect(JSON.stringify(labels)).toContain('runs away, or no air moves');
    expect(JSON.stringify(amounts)).toContain('> 700');
    expect(JSON.stringify(amounts)).not.toMatch(/\d{4,}/);
    expect(lines(amounts)).toBe(3);
    expect([lines(labels), lines(bars)]).toEqual([3, 3]);
  });
});
