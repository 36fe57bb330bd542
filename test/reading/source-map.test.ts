import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Path } from '../../src/reading/problem.ts';
import { sourceMap } from '../../src/reading/source-map.ts';
import { parseYaml } from '../../src/reading/yaml-source.ts';

function mapOf(text: string) {
  const parsed = parseYaml('f.yaml', text, 100_000);
  if (!parsed.ok) throw new Error(parsed.problem.message);
  return sourceMap(parsed.source);
}

/** A written value that knows where its parts went. */
type Plan =
  | { readonly scalar: string }
  | { readonly list: readonly Plan[] }
  | { readonly map: readonly (readonly [string, Plan])[] };

interface Place {
  readonly path: Path;
  readonly key: number | undefined;
  readonly value: number;
}

/** Writes a plan in flow or block style and notes the offset of every key and value while writing. */
function write(plan: Plan, block: boolean): { readonly text: string; readonly places: readonly Place[] } {
  let text = '';
  const places: Place[] = [];
  function put(part: Plan, path: Path, key: number | undefined, indent: number, inBlock: boolean): void {
    const isCollection = 'list' in part || 'map' in part;
    const many = 'list' in part ? part.list.length > 0 : 'map' in part && part.map.length > 0;
    const asBlock = inBlock && isCollection && many;
    if (asBlock && path.length > 0) text += `\n${' '.repeat(indent)}`;
    places.push({ path, key, value: text.length });
    if ('scalar' in part) {
      text += part.scalar;
    } else if ('list' in part) {
      putItems(
        part.list.map((item, index): [string | number, Plan] => [index, item]),
        '-',
        path,
        indent,
        asBlock,
      );
    } else {
      putItems(part.map, ':', path, indent, asBlock);
    }
  }
  function putItems(
    items: readonly (readonly [string | number, Plan])[],
    sign: '-' | ':',
    path: Path,
    indent: number,
    asBlock: boolean,
  ): void {
    const [open, close] = sign === '-' ? ['[', ']'] : ['{', '}'];
    if (!asBlock) text += `${open} `;
    for (const [index, [step, item]] of items.entries()) {
      if (index > 0) text += asBlock ? `\n${' '.repeat(indent)}` : ', ';
      const key = sign === ':' ? text.length : undefined;
      text += sign === ':' ? `${step}: ` : asBlock ? '- ' : '';
      put(item, [...path, step], key, indent + 2, asBlock);
    }
    if (!asBlock) text += ` ${close}`;
  }
  put(plan, [], undefined, 0, block);
  return { text, places };
}

const scalar = fc
  .constantFrom('120 mm', '12', '"a, b"', "'it''s'", 'hot day', '°C', 'true')
  .map((text): Plan => ({ scalar: text }));
const keys = fc.constantFrom('a', 'fan', 'side-gap', '"with space"', "'quoted'", 'ö');
const { plan } = fc.letrec<{ plan: Plan }>((tie) => ({
  plan: fc.oneof(
    { maxDepth: 4 },
    scalar,
    fc.array(tie('plan'), { maxLength: 3 }).map((list): Plan => ({ list })),
    fc
      .uniqueArray(fc.tuple(keys, tie('plan')), { maxLength: 3, selector: ([key]) => key })
      .map((map): Plan => ({ map })),
  ),
}));

function unquoted(path: Path): Path {
  return path.map((step) => (typeof step === 'string' ? step.replace(/^["']|["']$/g, '') : step));
}

describe('places of keys and values', () => {
  it('are those they were written to, in random documents', () => {
    fc.assert(
      fc.property(plan, fc.boolean(), (document, block) => {
        const { text, places } = write(document, block);
        const find = mapOf(text);
        for (const { path, key, value } of places) {
          expect(find(unquoted(path), 'value')).toBe(value);
          if (key !== undefined) expect(find(unquoted(path), 'key')).toBe(key);
        }
      }),
      { seed: 20_260_304, numRuns: 400 },
    );
  });

  it.each([
    ['a missing key is the key of the map that lacks it', 'a:\n  b: { c: 1 }', ['a', 'b', 'x'], 5],
    ['a missing key of a list item is that item', 'a:\n  - { c: 1 }', ['a', 0, 'x'], 7],
    ['a missing key at the top is the top', '# note\nb: 1', ['x'], 7],
    ['an empty value is its key', 'a:\n  b:\n  c: 1', ['a', 'b'], 5],
    ['a path that leads nowhere ends where it can', 'a: 1', ['a', 'b', 'c'], 0],
  ] as const)('%s', (_, text, path, offset) => {
    expect(mapOf(text)([...path], 'value')).toBe(offset);
  });
});
