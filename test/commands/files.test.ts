import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, readlinkSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { STARTER_SHAPES } from '../../src/commands/starters.ts';
import { SCHEMA_NAMES, schemaText } from '../../src/reading/editor/editor-schemas.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { rank } from '../../src/search/rank.ts';
import { shippedFans, shippedStock } from '../scenarios/shipped.ts';
import { hushwright, program, scenarioText } from './program.ts';

const folder = mkdtempSync(join(tmpdir(), 'hushwright-files-'));

function inFolder(...args: readonly string[]) {
  const run = spawnSync(process.execPath, [program, ...args], { cwd: folder });
  return { code: run.status, out: run.stdout.toString('utf8'), err: run.stderr.toString('utf8') };
}

function textOf(name: string): string {
  return readFileSync(join(folder, name), 'utf8');
}

describe('new', () => {
  it.each(STARTER_SHAPES)('has a scenario of the shape %s that reads and ranks at once', (shape) => {
    const text = scenarioText(`starters/${shape}`);
    const read = readScenario(`${shape}.yaml`, text, shippedFans, shippedStock);
    if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('; '));
    const [first] = rank(read.enclosure, { top: 1, gap: 8 }).rows;
    // Quiet enough to be worth it, loud enough that the fans have something to do.
    expect(first?.outcome.level).toBeGreaterThan(10);
    expect(first?.outcome.level).toBeLessThan(35);
    expect(text).toMatch(/^# Invented scenario: no real product\./);
    expect((text.match(/^\s*#/gm) ?? []).length).toBeGreaterThan(5);
  });

  it('writes it as it ships', () => {
    expect(inFolder('new', 'bypass.yaml', '--shape', 'bypass', '--quiet')).toEqual({
      code: 0,
      out: '',
      err: '',
    });
    expect(textOf('bypass.yaml')).toBe(scenarioText('starters/bypass'));
  });

  it('never writes over a file without being told', () => {
    writeFileSync(join(folder, 'mine.yaml'), 'mine\n');
    const refused = inFolder('new', 'mine.yaml');
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('there is a file of this name already');
    expect(textOf('mine.yaml')).toBe('mine\n');
    expect(inFolder('new', 'mine.yaml', '--force').code).toBe(0);
    expect(textOf('mine.yaml')).toContain('airway:');
  });

  it('writes the schema for editors beside it, and names it', () => {
    expect(inFolder('new', 'with.yaml', '--schema', 'box.schema.json').code).toBe(0);
    expect(textOf('with.yaml')).toMatch(/^# yaml-language-server: \$schema=\.\/box\.schema\.json\n/);
    expect(JSON.parse(textOf('box.schema.json'))).toMatchObject({ title: 'hushwright scenario' });
  });
});

describe('schema', () => {
  it('ships with the package, and is written only where nothing is', () => {
    for (const name of SCHEMA_NAMES) {
      const shipped = readFileSync(join(program, '..', 'schema', `${name}.json`), 'utf8');
      expect(schemaText(name)).toBe(shipped);
    }
    expect(inFolder('schema', 'catalog', '--to', 'catalog.json').code).toBe(0);
    expect(textOf('catalog.json')).toBe(schemaText('catalog'));
    expect(inFolder('schema', 'catalog', '--to', 'catalog.json').code).toBe(2);
  });
});

describe('a call that lacks something', () => {
  it('is told what, in the words of that command', () => {
    expect(hushwright(['new']).err).toContain('which file? See new --help');
    expect(hushwright(['completion']).err).toContain('which shell?');
    expect(hushwright(['rank']).err).toContain('which scenario?');
  });

  it('does not write to a file that stands for standard input', () => {
    const run = hushwright(['schema', 'scenario', '--to', '-']);
    expect([run.code, run.out]).toEqual([2, '']);
    expect(run.err).toContain('nothing can be written to standard input');
  });

  it('is told in JSON where JSON is wanted', () => {
    const run = hushwright(['air', '--power', '95 W', '--limit', '20 °C', '--json']);
    expect(run.code).toBe(1);
    expect(JSON.parse(run.out).result.problems[0].message).toContain('no flow carries heat away');
  });
});

describe('fans', () => {
  const SHOP =
    'fan,size mm,depth mm,flow CFM,pressure mmH2O,level dBA,rpm,power W,price\na,80,25,32,1.9,24,2000,1.1,9\nbad,80,25,32,1.9,24,fast,1.1,9\n';
  writeFileSync(join(folder, 'shop.csv'), SHOP);

  it('makes a catalog that a scenario can be checked with', () => {
    const run = inFolder('fans', '--from', 'shop.csv', '--to', 'my-fans.yaml');
    expect(run.code).toBe(2);
    expect(run.err).toContain('shop.csv:3:21: speed: this does not fit here');
    expect(run.err).toContain('1 fan kept, written to my-fans.yaml');
    writeFileSync(join(folder, 'box.yaml'), scenarioText('desk-scanner'));
    const checked = inFolder('check', 'box.yaml', '--catalog', 'my-fans.yaml', '--json');
    expect(checked.code, checked.err).toBe(0);
    const { warnings } = JSON.parse(checked.out) as {
      warnings: { code: string; file: string; line: number }[];
    };
    expect(warnings).toMatchObject([{ code: 'doubtful', file: 'my-fans.yaml', line: 9 }]);
    const alone = inFolder('check', 'my-fans.yaml');
    expect(alone.code).toBe(0);
    expect(alone.out).toMatch(/1 figure looks like a slip[\s\S]*no problems in my-fans\.yaml: 1 fan\n$/);
  });

  it('writes nothing by halves: no draft is left, and no file is replaced unless told', () => {
    const before = textOf('my-fans.yaml');
    const again = inFolder('fans', '--from', 'shop.csv', '--to', 'my-fans.yaml', '--family', 'other');
    expect(again.code).toBe(2);
    expect(textOf('my-fans.yaml')).toBe(before);
    expect(
      inFolder('fans', '--from', 'shop.csv', '--to', 'my-fans.yaml', '--family', 'other', '--force').code,
    ).toBe(2);
    expect(textOf('my-fans.yaml')).toMatch(/^family: other\n/);
    expect(readdirSync(folder).filter((name) => name.includes('draft'))).toEqual([]);
  });

  it('writes to standard output, and reads a list or a catalog from standard input', () => {
    const made = hushwright(['fans', '--from', '-'], SHOP);
    expect(made.out).toMatch(/^family: my fans\n/);
    const listed = hushwright(['fans', '--catalog', '-', '--no-shipped', '--json'], made.out);
    expect(JSON.parse(listed.out)).toMatchObject({ result: { fans: [{ fan: 'a' }] } });
    const both = hushwright(['check', '-', '--catalog', '-'], made.out);
    expect(both.code).toBe(2);
    expect(both.err).toContain('standard input can be only one of the files');
  });

  it('lists what is asked for, in text and in JSON', () => {
    const args = ['fans', '--size', '80 mm', '--depth', '20 mm', '--price', '10', '--by', 'level'];
    const run = inFolder(...args, '--flow', '15 m³/h', '--pressure', '5 Pa');
    expect(run.code).toBe(0);
    expect(run.out).toMatch(/^Fan +Size +Depth +Level/);
    expect(run.out).toContain('15.0 m³/h through a path that loses 5.0 Pa there');
    expect(inFolder('fans', '--size', '33 mm').code).toBe(1);
  });

  it.each([
    [['--flow', '20 m³/h'], '--flow and --pressure go together'],
    [
      ['--flow', '20', '--pressure', '5 Pa'],
      '--flow: found 20 without a unit, expected a flow such as 40 m³/h; did you mean "20 m³/h"?',
    ],
    [['--flow', '0 m³/h', '--pressure', '5 Pa'], 'more than 0'],
  ])('refuses %j', (args, words) => {
    const run = inFolder('fans', ...args);
    expect(run.code).toBe(2);
    expect(run.err).toContain(words);
  });

  it('takes the place of a shipped fan only if asked to', () => {
    const own = textOf('my-fans.yaml').replace('fan: a', 'fan: f80-25-a');
    writeFileSync(join(folder, 'own.yaml'), own);
    const refused = inFolder('check', 'box.yaml', '--catalog', 'own.yaml');
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('give --shadow');
    expect(inFolder('check', 'box.yaml', '--catalog', 'own.yaml', '--shadow').code).toBe(0);
  });
});

describe('solve --save-build', () => {
  // At full speed no changes are tried, which would take longer than the rest.
  const quick = ['--speed', '100', '--json'];
  const small = scenarioText('starters/single').replace(
    'fans: catalog',
    'fans: [p60-15-a, p60-15-b, s60-15-c, f60-25-a]',
  );

  it('puts a ranked build into the file, by way of a link too, and solves it by its name', () => {
    writeFileSync(join(folder, 'link-target.yaml'), small);
    symlinkSync('link-target.yaml', join(folder, 'link.yaml'));
    const first = inFolder('solve', 'link.yaml', '--rank', '2', '--save-build', 'second', ...quick);
    expect(first.code, first.err).toBe(0);
    expect(first.err).toContain('link.yaml has the build "second" now');
    const again = inFolder('solve', 'link.yaml', '--build', 'second', ...quick);
    const build = (text: string): unknown =>
      (JSON.parse(text) as { result: { outcome: { build: object } } }).result.outcome.build;
    expect(build(again.out)).toEqual(build(first.out));
    expect(textOf('link-target.yaml')).toContain('  second: ');
    expect(readlinkSync(join(folder, 'link.yaml'))).toBe('link-target.yaml');
    const twice = inFolder('solve', 'link.yaml', '--save-build', 'second', ...quick);
    expect(twice.code).toBe(2);
    expect(twice.err).toContain('there is a build "second" already');
  });

  it('is refused on standard input and beside --build', () => {
    const piped = hushwright(['solve', '-', '--save-build', 'x', ...quick], small);
    expect(piped.code).toBe(2);
    expect(piped.err).toContain('standard input cannot be written to');
    expect(inFolder('solve', 'box.yaml', '--build', 'as-built', '--save-build', 'x').code).toBe(2);
  });
});
