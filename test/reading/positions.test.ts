import { describe, expect, it } from 'vitest';
import { isCollection, isMap, isScalar, isSeq, type Node, parseDocument } from 'yaml';
import type { Path } from '../../src/reading/problem.ts';
import { sourceMap } from '../../src/reading/source-map.ts';
import { parseYaml } from '../../src/reading/yaml-source.ts';
import { randomDocument } from './random-document.ts';

/** Number of documents; each is parsed by two parsers that share no code. */
const DOCUMENTS = 20_000;

interface Place {
  readonly path: Path;
  readonly key: number | undefined;
  readonly value: number;
}

function startOf(node: Node): number {
  const [start] = node.range ?? [];
  if (start === undefined) throw new Error('a node without a place');
  return start;
}

/** Places of all keys and values, as the package `yaml` has them. */
function placesIn(node: Node, path: Path, key: number | undefined, into: Place[]): Place[] {
  into.push({ path, key, value: startOf(node) });
  if (isMap(node)) {
    for (const pair of node.items) {
      const name = pair.key as Node;
      const step = isScalar(name) ? String(name.source ?? name.value) : '';
      placesIn(pair.value as Node, [...path, step], startOf(name), into);
    }
  } else if (isSeq(node)) {
    for (const [index, item] of node.items.entries())
      placesIn(item as Node, [...path, index], undefined, into);
  }
  return into;
}

// Computed with the package yaml 2.9.1, whose ranges come from a parser of its own.
describe('places of keys and values', () => {
  it(`are those of an independent parser in ${DOCUMENTS} random documents`, () => {
    const wrong: string[] = [];
    let compared = 0;
    for (let seed = 1; seed <= DOCUMENTS; seed++) {
      const text = randomDocument(seed);
      const other = parseDocument(text, { version: '1.2', schema: 'core', keepSourceTokens: false });
      const read = parseYaml('f.yaml', text, 100_000);
      if (!read.ok || other.errors.length > 0 || other.contents === null) {
        wrong.push(`${seed}: ${read.ok ? '' : read.problem.message} ${other.errors[0]?.message ?? ''}`);
        continue;
      }
      const find = sourceMap(read.source);
      for (const { path, key, value } of placesIn(other.contents, [], undefined, [])) {
        compared++;
        if (find(path, 'value') !== value) wrong.push(`${seed}: value of ${path.join('.')}`);
        if (key !== undefined && find(path, 'key') !== key) wrong.push(`${seed}: key of ${path.join('.')}`);
      }
    }
    expect(wrong.slice(0, 10)).toEqual([]);
    expect(compared).toBeGreaterThan(4 * DOCUMENTS);
  });

  it('are compared where it matters: documents have collections in collections', () => {
    const nested = Array.from(
      { length: 200 },
      (_, seed) => parseDocument(randomDocument(seed + 1)).contents,
    ).filter((contents) => isCollection(contents) && contents.items.length > 1);
    expect(nested.length).toBeGreaterThan(80);
  });
});
