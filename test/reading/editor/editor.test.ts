import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { catalogSchema, scenarioSchema, schemaText } from '../../../src/reading/editor/editor-schemas.ts';
import { eachKey, type SchemaPart } from '../../../src/reading/editor/schema-tree.ts';
import { unmarked } from '../marked.ts';
import { LanguageServer } from './language-server.ts';

const root = resolve(import.meta.dirname, '../../..');
const folder = mkdtempSync(join(tmpdir(), 'hushwright-editor-'));
const SCENARIO = '# yaml-language-server: $schema=./scenario.schema.json\n';
const CATALOG = '# yaml-language-server: $schema=./catalog.schema.json\n';

// Checked with the package yaml-language-server 1.25.0, which several editors use: it reads the schema by itself, and
// shares no code with the reader.
describe('a language server that is told of the schema', () => {
  const server = new LanguageServer();

  beforeAll(async () => {
    writeFileSync(join(folder, 'scenario.schema.json'), schemaText('scenario'));
    writeFileSync(join(folder, 'catalog.schema.json'), schemaText('catalog'));
    await server.begin(folder);
  });
  afterAll(() => server.end());

  const starters = readdirSync(join(root, 'scenarios/starters')).map((name) => `scenarios/starters/${name}`);
  const scenarios = readdirSync(join(root, 'scenarios'))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `scenarios/${name}`);
  it('finds nothing wrong with what ships', async () => {
    for (const path of [...starters, ...scenarios]) {
      const text = SCENARIO + readFileSync(join(root, path), 'utf8');
      const found = await server.open(join(folder, path.replaceAll('/', '-')), text);
      expect(found.map(({ message, range }) => `${path}:${range.start.line}: ${message}`)).toEqual([]);
    }
    const families = [
      'box-figures.yaml',
      'standard-80.yaml',
      'stock/perforated-plate.yaml',
      'stock/foam.yaml',
    ];
    for (const name of families) {
      const text = CATALOG + readFileSync(join(root, 'catalog', name), 'utf8');
      const found = await server.open(join(folder, name.replaceAll('/', '-')), text);
      expect(found.map(({ message }) => `${name}: ${message}`)).toEqual([]);
    }
  });

  it.each([
    ['a unit of another kind', 'site: { room: ¦24 mm }', 'Write a temperature with its unit'],
    ['a number without a unit', 'margin: ¦"3"', 'Write a temperature difference'],
    ['an unknown key', 'site: { room: 24 °C, ¦altitud: 100 m }', 'altitud'],
    ['a word that is none', 'listener: { distance: 1 m, place: ¦cellar }', 'corner'],
    ['a misspelt field of an element', 'elements:\n  front: { perforated: 60 x 30 mm, ¦hol: 4 mm }', 'hol'],
  ])('underlines %s', async (name, marked, words) => {
    const { text, places } = unmarked(SCENARIO + marked);
    const found = await server.open(join(folder, `${name.replaceAll(' ', '-')}.yaml`), text);
    const [line = 0, column = 0] = places[0] ?? [];
    const there = found.filter(({ range }) => range.start.line === line - 1);
    expect(there.map(({ message }) => message).join('\n')).toContain(words);
    expect(there.map(({ range }) => range.start.character)).toContain(column - 1);
  });

  async function completed(name: string, marked: string): Promise<readonly string[]> {
    const { text, places } = unmarked(SCENARIO + marked);
    const file = join(folder, `${name}.yaml`);
    await server.open(file, text);
    const [line = 0, column = 0] = places[0] ?? [];
    const result = await server.at('completion', file, line - 1, column - 1);
    const items = (result as { items: readonly { label: string }[] }).items;
    return items.map(({ label }) => label);
  }

  it('completes keys and words', async () => {
    expect(await completed('top', '¦')).toEqual(
      expect.arrayContaining(['site', 'listener', 'heat', 'airway']),
    );
    const leg = 'airway:\n  chambers: [box]\n  legs:\n    - leg: in\n      ¦';
    expect(await completed('leg', leg)).toEqual(expect.arrayContaining(['from', 'to', 'through', 'rise']));
    const fields = 'elements:\n  front:\n    perforated: 60 mm\n    ¦';
    expect(await completed('fields', fields)).toEqual(
      expect.arrayContaining(['hole', 'web', 'sheet', 'stock']),
    );
    expect(await completed('place', 'listener:\n  distance: 1 m\n  place: ¦')).toEqual(
      expect.arrayContaining(['free', 'plane', 'edge', 'corner']),
    );
  });

  it('tells on hover what a key means and which units it takes', async () => {
    const { text, places } = unmarked(
      `${SCENARIO}site: { ¦room: 24 °C }\nelements:\n  gap: { slot: 90 x 2 mm, ¦depth: 1 mm }\n`,
    );
    const file = join(folder, 'hover.yaml');
    await server.open(file, text);
    const told = await Promise.all(
      places.map(async ([line, column]) => JSON.stringify(await server.at('hover', file, line - 1, column))),
    );
    expect(told[0]).toContain('Room temperature');
    expect(told[0]).toContain('°F');
    expect(told[1]).toContain('Thickness of the wall');
  });
});

describe('the schemas', () => {
  it.each([
    ['scenario', scenarioSchema()],
    ['catalog', catalogSchema()],
  ] as const)('of a %s have words on every key', (_, schema) => {
    const silent: string[] = [];
    let keys = 0;
    eachKey(schema, '', (part: SchemaPart, path) => {
      keys++;
      const { description } = part;
      // A form that only says what the value is begins with its article: the words of a key begin with a capital.
      if (typeof description !== 'string' || !/^[A-Z0-9]/.test(description)) silent.push(path);
    });
    expect(keys).toBeGreaterThan(40);
    expect(silent).toEqual([]);
  });

  it('stay small enough to be read at once by an editor', () => {
    expect(schemaText('scenario').length).toBeLessThan(400_000);
  });
});
