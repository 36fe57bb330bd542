import { describe, expect, it } from 'vitest';
import { outcomeBands, rankingBands } from '../../src/bands/outcome-bands.ts';
import { EXIT } from '../../src/commands/console.ts';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import type { Json } from '../../src/presentation/document.ts';
import { checkDocument, problemsDocument, rankDocument, solveDocument } from '../../src/presentation/json.ts';
import type { RankBands } from '../../src/presentation/rank-view.ts';
import { ventDocument } from '../../src/presentation/vent/vent-data.ts';
import { adviceOn } from '../../src/questions/advice.ts';
import type { Situation } from '../../src/questions/levers/lever.ts';
import { ventAnswer } from '../../src/questions/vent/vent.ts';
import { ventTask } from '../../src/questions/vent/vent-wishes.ts';
import { wouldDo } from '../../src/questions/would-do.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { BOUNDS } from '../../src/search/hunt.ts';
import { rank } from '../../src/search/rank.ts';
import type { Ranking } from '../../src/search/ranking.ts';
import { spaceSize } from '../../src/search/space.ts';
import { askDocuments } from './ask-documents.ts';
import { blockWith, codeIn, rowsOf, sectionOf, textOf } from './document.ts';
import { fanDocuments } from './fan-documents.ts';
import { questionDocuments } from './question-documents.ts';

const readme = textOf('README.md');
const meta = { version: '0', command: 'rank', warnings: [{ code: 'a', message: 'b', at: '/result' }] };

/** The first scenario of the README with one fan, so that it ranks at once; too cool a limit if none is to be found. */
function rankedExample(limit: string) {
  const family = blockWith(readme, 'yaml', 'family:');
  const catalog = readCatalogs([{ file: 'my-fans.yaml', text: family }]);
  const text = blockWith(readme, 'yaml', 'title:')
    .replace('s60-15-a', 'no-name-60')
    .replace('limit: 70 °C', `limit: ${limit}`);
  const source = { file: 'amplifier.yaml', text, fans: catalog.ok ? catalog.fans : [] };
  const read = readScenario(source.file, text, source.fans);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  const ranking = rank(read.enclosure, { top: 1, gap: 0.01 });
  return { enclosure: read.enclosure, ranking, source };
}

/** Bands of a ranking of one row, compared with itself for want of another. */
function bandsOf(enclosure: Enclosure, ranking: Ranking): RankBands {
  const comparison = { probability: 0.5, verdict: 'no-real-difference' } as const;
  const rows = rankingBands(enclosure, ranking, 'mean');
  return { rows: rows.map((row) => row && { ...row, first: comparison, above: comparison }), probable: 0.7 };
}

function keysIn(value: Json): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(keysIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [key, ...keysIn(inner)]);
}

/** The documents of a build that is adequate and of the nearest miss, with all that is asked about them. */
function adviceDocuments(): readonly unknown[] {
  const fine = rankedExample('70 °C');
  const warm = rankedExample('35 °C');
  const situationOf = ({ enclosure, ranking }: typeof fine): Situation => {
    const outcome = ranking.rows[0]?.outcome ?? ranking.nearestMiss?.outcome;
    if (!outcome) throw new Error('there is no build');
    return { enclosure, build: outcome.build.options, outcome, fans: [] };
  };
  const well = situationOf(fine);
  const miss = situationOf(warm);
  const advice = adviceOn(miss);
  const wishes = {
    speed: undefined,
    keep: 0.5,
    field: undefined,
    sheet: undefined,
    hole: undefined,
    web: undefined,
  };
  const task = ventTask(well.enclosure, well.build, {
    ...wishes,
    opening: 'back',
    duty: undefined,
    aim: 'flow',
    process: 'drill',
    blades: undefined,
  });
  const answer = typeof task === 'string' ? task : ventAnswer(task);
  if (typeof answer === 'string') throw new Error(answer);
  return [
    rankDocument(warm.ranking, meta, wouldDo(miss)),
    solveDocument(well.outcome, meta, adviceOn(well).next),
    solveDocument(miss.outcome, meta, advice.next, advice.wouldDo),
    ventDocument(answer, meta),
  ];
}

describe('the keys of JSON documents', () => {
  const { enclosure, ranking, source } = rankedExample('70 °C');
  const outcome = ranking.rows[0]?.outcome;
  if (!outcome) throw new Error('nothing adequate');
  const failed = readScenario('a.yaml', 'title: 3', []);
  const documents = [
    rankDocument(ranking, meta, undefined, bandsOf(enclosure, ranking)),
    rankDocument(rankedExample('35 °C').ranking, meta),
    solveDocument(outcome, meta, undefined, undefined, outcomeBands(enclosure, outcome)),
    checkDocument(enclosure, spaceSize(enclosure), meta),
    problemsDocument(failed.ok ? [] : failed.problems, meta),
    ...adviceDocuments(),
    ...fanDocuments(blockWith(readme, 'yaml', 'family:'), meta),
    ...askDocuments(enclosure, meta),
    ...questionDocuments({ source, enclosure, build: outcome.build.options }, meta),
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
