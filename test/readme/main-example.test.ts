import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rankingBands } from '../../src/bands/outcome-bands.ts';
import { inventedNote } from '../../src/commands/invented.ts';
import { plain } from '../../src/presentation/paint.ts';
import { rankView } from '../../src/presentation/rank-view.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { rank } from '../../src/search/rank.ts';
import { blockWith, textOf } from './document.ts';

const TITLE = 'Film scanner, desk side';
/** What stands in the README for lines that are left out. */
const CUT = ' ...';

/** What `npm start` prints in a window of 100 columns. */
function mainAnswer(): readonly string[] {
  const families = readdirSync(resolve(import.meta.dirname, '../../catalog'))
    .filter((name) => name.endsWith('.yaml'))
    .sort();
  const catalog = readCatalogs(families.map((name) => ({ file: name, text: textOf(`catalog/${name}`) })));
  const file = 'scenarios/desk-scanner.yaml';
  const read = readScenario(file, textOf(file), catalog.ok ? catalog.fans : []);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  const { enclosure } = read;
  const ranking = rank(enclosure, { top: 10, gap: 0.01 });
  const { tie, verdict } = enclosure.assumptions.sound;
  const bands = { rows: rankingBands(enclosure, ranking, 'mean'), probable: verdict.probable };
  const view = rankView(ranking, { width: 100, paint: plain, tie, bands });
  const builds = ranking.rows.map(({ outcome }) => outcome.build.options);
  return (view + inventedNote(enclosure, builds)).split('\n');
}

describe('the main example', () => {
  // No source: the README shows what the program prints.
  it('is answered as the README shows, but for what is cut', () => {
    const shown = blockWith(textOf('README.md'), 'text', TITLE).split('\n');
    const cut = shown.indexOf(CUT);
    const answer = mainAnswer();
    expect(cut).toBeGreaterThan(0);
    expect(shown.slice(0, cut)).toEqual(answer.slice(0, cut));
    expect(shown.slice(cut + 1).filter((line) => !answer.includes(line))).toEqual([]);
  });
});
