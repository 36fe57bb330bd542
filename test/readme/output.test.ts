import { describe, expect, it } from 'vitest';
import { EXIT } from '../../src/commands/console.ts';
import type { Json } from '../../src/presentation/document.ts';
import { checkDocument, problemsDocument, rankDocument, solveDocument } from '../../src/presentation/json.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { BOUNDS } from '../../src/search/hunt.ts';
import { rank } from '../../src/search/rank.ts';
import { spaceSize } from '../../src/search/space.ts';
import { blockWith, codeIn, rowsOf, sectionOf, textOf } from './document.ts';

const readme = textOf('README.md');
const meta = { version: '0', command: 'rank', warnings: [{ code: 'a', message: 'b', at: '/result' }] };

/** The first scenario of the README with one fan, so that it ranks at once; too cool a limit if none is to be found. */
function rankedExample(limit: string) {
  const family = blockWith(readme, 'yaml', 'family:');
  const catalog = readCatalogs([{ file: 'my-fans.yaml', text: family }]);
  const text = blockWith(readme, 'yaml', 'title:')
    .replace('s60-15-a', 'no-name-60')
    .replace('limit: 70 °C', `limit: ${limit}`);
  const read = readScenario('amplifier.yaml', text, catalog.ok ? catalog.fans : []);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  const ranking = rank(read.enclosure, { top: 1, gap: 0.01 });
  return { enclosure: read.enclosure, ranking };
}

function keysIn(value: Json): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(keysIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [key, ...keysIn(inner)]);
}

describe('the keys of JSON documents', () => {
  const { enclosure, ranking } = rankedExample('70 °C');
  const outcome = ranking.rows[0]?.outcome;
  if (!outcome) throw new Error('nothing adequate');
  const failed = readScenario('a.yaml', 'title: 3', []);
  const documents = [
    rankDocument(ranking, meta),
    rankDocument(rankedExample('35 °C').ranking, meta),
    solveDocument(outcome, meta),
    checkDocument(enclosure, spaceSize(enclosure), meta),
    problemsDocument(failed.ok ? [] : failed.problems, meta),
  ];
  const written = new Set(documents.flatMap((document) => keysIn(JSON.parse(JSON.stringify(document)))));
  const section = sectionOf(readme, 'JSON');
  const told = new Set(codeIn(section));

  it('are all told', () => {
    expect([...written].filter((key) => !told.has(key))).toEqual([]);
  });

  it('are told of no document that lacks them', () => {
    const cells = rowsOf(section).map(([, keys = '']) => keys);
    const named = cells.flatMap(codeIn).filter((key) => key !== 'null');
    expect(named.length).toBeGreaterThan(80);
    expect(named.filter((key) => !written.has(key))).toEqual([]);
  });
});

describe('what the README says of answers', () => {
  it('names every exit code', () => {
    const codes = rowsOf(sectionOf(readme, 'Exit codes')).map(([code]) => Number(code));
    expect(codes.filter((code) => Number.isFinite(code))).toEqual(Object.values(EXIT));
  });

  it('names every way a build can be ruled out', () => {
    const prose = sectionOf(readme, 'How the proof works').replace(/\s+/g, ' ');
    expect(BOUNDS.filter((bound) => !prose.includes(`*${bound}*`))).toEqual([]);
  });
});
