import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rankingBands } from '../../src/bands/outcome-bands.ts';
import { inventedNote } from '../../src/commands/invented.ts';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { plain } from '../../src/presentation/paint.ts';
import { problemView } from '../../src/presentation/problem-view.ts';
import { rankView } from '../../src/presentation/rank-view.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { rank } from '../../src/search/rank.ts';
import { blockWith, rowsOf, sectionOf, textOf } from './document.ts';

const readme = textOf('README.md');
const scenario = blockWith(readme, 'yaml', 'title:');
const FILE = 'amplifier.yaml';

const families = readdirSync(resolve(import.meta.dirname, '../../catalog')).filter((name) =>
  name.endsWith('.yaml'),
);
const shipped = readCatalogs(
  families.sort().map((name) => ({ file: name, text: textOf(`catalog/${name}`) })),
);
const fans = shipped.ok ? shipped.fans : [];

/** Reads a scenario that must be without problems. */
function good(text: string): Enclosure {
  const read = readScenario(FILE, text, fans);
  if (!read.ok) throw new Error(problemView(read.problems, { paint: plain }));
  return read.enclosure;
}

describe('the first scenario of the README', () => {
  const enclosure = good(scenario);
  const ranking = rank(enclosure, { top: 3, gap: 0.01 });

  it('reads without a problem and ranks with adequate builds', () => {
    expect(ranking.complete).toBe(true);
    expect(ranking.rows.map(({ outcome }) => outcome.adequate)).toEqual([true, true, true]);
  });

  it('has the answer that the README shows', () => {
    const { tie, verdict } = enclosure.assumptions.sound;
    const bands = { rows: rankingBands(enclosure, ranking, 'mean'), probable: verdict.probable };
    const view = rankView(ranking, { width: 100, paint: plain, tie, bands });
    const builds = ranking.rows.map(({ outcome }) => outcome.build.options);
    expect(view + inventedNote(enclosure, builds)).toBe(blockWith(readme, 'text', enclosure.title));
  });

  it('runs in the loud evening as the README tells', () => {
    const evening = ranking.rows[0]?.outcome.duties.find(({ duty }) => duty === 'loud evening');
    const told = /loud evening the first one runs at (\d+) rpm, and at (\d+) dB\(A\)/.exec(readme);
    expect(told?.slice(1)).toEqual([
      String(Math.round((60 * (evening?.banks[0]?.speed ?? 0)) / 10) * 10),
      (evening?.level ?? 0).toFixed(0),
    ]);
  });

  it('is explained line by line, each line once', () => {
    const lines = scenario.split('\n').filter((line) => /^ {2}\S/.test(line) || /^\w+: ./.test(line));
    const explained = sectionOf(readme, 'A first scenario')
      .split('\n')
      .filter((line) => line.startsWith('- `'));
    // Lines of legs stand deeper; the key of their list needs no words.
    const legs = scenario.split('\n').filter((line) => line.startsWith('    - { leg:'));
    const keys = lines.filter((line) => line.trim() === 'legs:');
    expect(explained).toHaveLength(lines.length + legs.length - keys.length);
  });
});

describe('the problems that the README shows', () => {
  const block = blockWith(readme, 'text', `problems in ${FILE}`);
  const wrongLines = [...block.matchAll(/^ +(\d+) \| (.*)$/gm)];

  it('are those of the lines they show', () => {
    const lines = scenario.split('\n');
    for (const [, number = '', text = ''] of wrongLines) lines[Number(number) - 1] = text;
    const read = readScenario(FILE, lines.join('\n'), fans);
    expect(wrongLines.length).toBeGreaterThan(1);
    expect(read.ok ? '' : problemView(read.problems, { paint: plain })).toBe(block);
  });
});

describe('the other files of the README', () => {
  it('a catalog reads without a problem', () => {
    const read = readCatalogs([{ file: 'my-fans.yaml', text: blockWith(readme, 'yaml', 'family:') }]);
    expect(read.ok ? read.fans.map(({ id }) => id) : read.problems).toEqual(['grey-80', 'no-name-60']);
  });

  it('stock reads without a problem', () => {
    const read = readCatalogs([{ file: 'sheets.yaml', text: blockWith(readme, 'yaml', 'open-area:') }]);
    expect(read.ok ? read.stock.map(({ id }) => id) : read.problems).toEqual(['drawer-front']);
  });

  it('choices of whole elements are read', () => {
    const choices = blockWith(readme, 'yaml', 'element:');
    const changed = scenario
      .replace('through: [gap]', 'through: [gap, dust]')
      .replace('elements:\n', 'elements:\n  dust: { passage: 92 x 92 mm }\n')
      .replace('choices:\n', choices)
      .replace('back: 4 mm }', 'back: 4 mm, dust: foam }');
    const place = good(changed).places.find(({ id }) => id === 'dust');
    expect(place?.options).toHaveLength(2);
  });

  it('assumptions are read', () => {
    const { sound, fan } = good(`${scenario}\n${blockWith(readme, 'yaml', 'assume:')}`).assumptions;
    expect([sound.fanFloor, sound.stall.rise, fan.deratingAcrossFins]).toEqual([8, 4, 0.85]);
  });
});

describe('the shipped catalog', () => {
  it('is as large as the README says', () => {
    const told = /holds (\d+) invented fans from (\d+) to (\d+) mm and from (\d+) to\s+(\d+) mm deep/.exec(
      readme,
    );
    const of = (pick: (lengths: readonly number[]) => number, key: 'size' | 'depth') =>
      Math.round(1000 * pick(fans.map((fan) => fan[key])));
    const least = (lengths: readonly number[]) => Math.min(...lengths);
    const most = (lengths: readonly number[]) => Math.max(...lengths);
    expect(told?.slice(1).map(Number)).toEqual([
      fans.length,
      of(least, 'size'),
      of(most, 'size'),
      of(least, 'depth'),
      of(most, 'depth'),
    ]);
    expect(new Set(fans.map(({ provenance }) => provenance))).toEqual(new Set(['invented']));
  });
});

describe('the reader of tables', () => {
  it('takes cells apart and leaves rulers out', () => {
    expect(rowsOf('| a | b |\n|---|---|\n| `c` | d, e |\ntext')).toEqual([
      ['a', 'b'],
      ['`c`', 'd, e'],
    ]);
  });
});
