import { existsSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { calls } from '../../src/arguments/calls.ts';
import { callFaults, declaredOptions } from './command-line.ts';
import { anchorsOf, blocksOf, codeIn, linksIn, sectionOf, textOf } from './document.ts';

const root = resolve(import.meta.dirname, '../..');
const readme = textOf('README.md');
const developers = textOf('DEVELOPERS.md');
const declared = declaredOptions(calls);
const { scripts } = z
  .object({ scripts: z.record(z.string(), z.string()) })
  .parse(JSON.parse(textOf('package.json')));

/** Lines of a document that call the program: whole lines of shell blocks, and calls in running text. */
function callsIn(document: string): readonly string[] {
  const lines = [...blocksOf(document, 'sh').flatMap((block) => block.split('\n')), ...codeIn(document)];
  return lines.filter((line) => /^(?:npx hushwright|node dist\/hushwright\.js|hushwright) \S/.test(line));
}

describe('calls of the program in the README', () => {
  it('are all accepted', () => {
    const lines = callsIn(readme);
    expect(lines.length).toBeGreaterThan(7);
    expect(lines.flatMap((line) => callFaults(line, declared))).toEqual([]);
  });

  it('show every command, and its tables every option', () => {
    const section = sectionOf(readme, 'The commands');
    const named = codeIn(section);
    expect([...declared.commands.keys()].filter((command) => !named.includes(command))).toEqual([]);
    const options = [...declared.commands.values()].flat().filter((option) => option !== 'version');
    const untold = options.filter(
      (option) => !named.includes(`--${option}`) && !named.includes(`--no-${option}`),
    );
    expect(untold).toEqual([]);
  });
});

describe('the check of calls', () => {
  it('finds commands, options, short names and switches', () => {
    expect([...declared.commands.keys()]).toEqual(calls.map(({ name }) => name));
    expect(declared.commands.get('rank')).toEqual(
      expect.arrayContaining(['catalog', 'json', 'top', 'gap', 'time-limit']),
    );
    expect(declared.commands.get('solve')).toEqual(
      expect.arrayContaining(['json', 'build', 'rank', 'speed', 'duty']),
    );
    expect(declared.commands.get('check')).not.toContain('top');
    expect(declared.aliases.get('q')).toBe('quiet');
    expect(declared.switches).toContain('shipped');
  });

  it.each([
    ['npx hushwright rnk a.yaml', 'there is no command rnk'],
    ['npx hushwright rank a.yaml --tpo 3', 'rank has no option --tpo'],
    ['node dist/hushwright.js check a.yaml --top 3', 'check has no option --top'],
    ['hushwright rank a.yaml --no-top', 'rank has no option --no-top'],
    ['hushwright rank a.yaml -x', 'rank has no option -x'],
  ])('sees what is wrong with %s', (call, fault) => {
    expect(callFaults(call, declared)).toEqual([fault]);
  });

  it.each([
    ['npx hushwright --help'],
    ['npx hushwright rank - -q --no-shipped --no-color'],
    ['node dist/hushwright.js solve a.yaml --speed 100'],
  ])('is content with %s', (call) => {
    expect(callFaults(call, declared)).toEqual([]);
  });
});

describe.each([
  ['README.md', readme],
  ['DEVELOPERS.md', developers],
])('%s', (_, document) => {
  it('has links that lead somewhere', () => {
    const anchors = anchorsOf(document);
    const broken = linksIn(document).filter((target) =>
      target.startsWith('#') ? !anchors.includes(target.slice(1)) : !existsSync(resolve(root, target)),
    );
    expect(linksIn(document).length).toBeGreaterThan(0);
    expect(broken).toEqual([]);
  });

  it('names scripts that exist', () => {
    const named = [...document.matchAll(/\bnpm (?:run )?(start|test|[a-z]+(?::[a-z]+)?)\b/g)].map(
      ([, name = '']) => name,
    );
    const own = ['ci', 'link', 'run'];
    expect(named.length).toBeGreaterThan(2);
    expect(named.filter((name) => !own.includes(name) && !(name in scripts))).toEqual([]);
  });
});

describe('DEVELOPERS.md', () => {
  const folders = (at: string) =>
    readdirSync(resolve(root, at), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => `${name}/`);

  it('draws every room and no other', () => {
    const drawing = blocksOf(developers, 'text').find((block) => block.startsWith('src/')) ?? '';
    const [house = ''] = drawing.split('\n\n');
    const drawn = [...house.matchAll(/^ {2}(\w+\/) /gm)].map(([, room = '']) => room);
    expect(drawn.toSorted()).toEqual(folders('src').toSorted());
    const rooms = [...folders('src'), 'psychrolib.d.cts'];
    const others = folders('test').filter((folder) => !rooms.includes(folder));
    expect(others.filter((folder) => !drawing.includes(`  ${folder} `))).toEqual([]);
  });

  it('names files that exist', () => {
    const paths = codeIn(developers).filter(
      (code) => /^(?:src|test|\.ci)\/[\w./-]+$/.test(code) || code === '.ci/run',
    );
    // The folder of old formats is told to be still to come.
    const missing = paths.filter((path) => path !== 'test/formats' && !existsSync(resolve(root, path)));
    expect(paths.length).toBeGreaterThan(20);
    expect(missing).toEqual([]);
  });

  it('names files of the search that exist', () => {
    const section = sectionOf(developers, 'How a ranking is found and proved');
    const names = codeIn(section).filter((code) => /^[\w-]+\.ts$/.test(code));
    expect(names.length).toBeGreaterThan(10);
    expect(names.filter((name) => !existsSync(resolve(root, 'src/search', name)))).toEqual([]);
  });

  it('names every script', () => {
    const named = new Set(codeIn(sectionOf(developers, 'Commands')));
    const hidden = Object.keys(scripts).filter((name) => name.startsWith('pre'));
    const untold = Object.keys(scripts).filter(
      (name) => !hidden.includes(name) && !named.has(`npm run ${name}`) && !named.has(`npm ${name}`),
    );
    expect(untold).toEqual([]);
  });
});
