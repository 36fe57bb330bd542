import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { VERSION } from '../../src/commands/version.ts';
import { hushwright, program, scenarioText, written } from './program.ts';

const charger = 'scenarios/shelf-charger.yaml';
const dock = 'scenarios/sealed-drive-dock.yaml';

describe('exit codes', () => {
  it('0: answered', () => {
    expect(hushwright(['rank', charger]).code).toBe(0);
    expect(hushwright(['check', charger]).code).toBe(0);
    expect(hushwright(['--help']).code).toBe(0);
  });

  it('1: no adequate build, and the nearest miss is told', () => {
    const run = hushwright(['rank', dock]);
    expect(run.code).toBe(1);
    expect(run.out).toContain('Nearest miss: in hot day, controller is');
    expect(hushwright(['solve', dock]).code).toBe(1);
  });

  it.each([
    ['no command', []],
    ['a misspelt command', ['rnk', charger]],
    ['no scenario', ['rank']],
    ['an unknown option', ['rank', charger, '--tpo', '3']],
    ['a list of no length', ['rank', charger, '--top', '0']],
    ['a file that is not there', ['rank', 'scenarios/nowhere.yaml']],
    ['a folder for a file', ['rank', 'scenarios']],
    ['a build that is not there', ['solve', 'scenarios/desk-scanner.yaml', '--build', 'as-bilt']],
  ])('2: %s', (_, args) => {
    const run = hushwright(args);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.err).not.toMatch(/\n\s+at /);
  });

  it('130: interrupted, with the best so far', () => {
    const run = spawnSync('bash', [
      '-c',
      `${process.execPath} ${program} rank scenarios/desk-scanner.yaml --top 1000 & sleep 1.5; kill -INT $!; wait $!`,
    ]);
    expect(run.status).toBe(130);
    expect(run.stdout.toString()).toContain('Film scanner');
  });
});

describe('bad files', () => {
  const text = scenarioText('shelf-charger');
  it.each([
    ['an empty file', ''],
    ['wrong indentation', text.replace('\n  legs:', '\n   legs:')],
    ['a missing element', text.replace('  foam: {', '  foan: {')],
    ['a leg to a chamber that does not exist', text.replace('to: tail', 'to: tale')],
    ['zero area', text.replace('perforated: 42 x 42 mm', 'perforated: 0 x 42 mm')],
    ['negative watts', text.replace('34 W', '-34 W')],
    ['a flow where a length is wanted', text.replace('depth: 15 mm', 'depth: 15 m³/h')],
    ['5 MB of one value', `title: ${'x'.repeat(5_000_000)}`],
    ['binary junk', Buffer.from(Array.from({ length: 4096 }, (_, index) => (index * 7919) % 256))],
    ['a cyclic alias', 'title: &a [*a]\n'],
  ])('%s: placed, no stack trace, exit 2', (_, content) => {
    const file = written('bad.yaml', content);
    const run = hushwright(['rank', file]);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.err).toMatch(new RegExp(`^${file}:\\d+:\\d+: `));
    expect(run.err).not.toMatch(/\n\s+at /);
  });

  it('a speed of 0 % is refused', () => {
    expect(hushwright(['solve', charger, '--speed', '0']).code).toBe(2);
  });

  it('a catalog with an unsorted or rising curve is refused at the curve', () => {
    const fan = (flow: string, pressure: string) =>
      `family: bad\nprovenance: invented\nfans:\n  - { fan: x, size: 40 mm, depth: 10 mm, speed: 5000 rpm, curve: { flow: ${flow}, pressure: ${pressure} }, noise: [{ level: 30 dB(A) }], power: 1 W }\n`;
    for (const curve of [fan('0 4 2 m³/h', '20 10 0 Pa'), fan('0 2 4 m³/h', '5 10 20 Pa')]) {
      const file = written('bad-fans.yaml', curve);
      const run = hushwright(['rank', charger, '--catalog', file]);
      expect(run.code).toBe(2);
      expect(run.err).toContain(`${file}:4:`);
    }
  });

  it('all problems of a file come in one run', () => {
    const file = written(
      'bad.yaml',
      text.replace('34 W', '34').replace('0.8 m', '"0,8 m"').replace('title:', 'titel:'),
    );
    const run = hushwright(['rank', file]);
    expect(run.err).toContain('3 problems');
    expect(run.err).toContain('did you mean "title"');
  });
});

describe('streams', () => {
  it('reads a scenario from standard input', () => {
    expect(hushwright(['check', '-'], scenarioText('shelf-charger')).code).toBe(0);
  });

  it('writes JSON alone, the same bytes each time, errors included', () => {
    const first = hushwright(['rank', charger, '--json']);
    expect(hushwright(['rank', charger, '--json']).out).toBe(first.out);
    const document = JSON.parse(first.out);
    expect(document.formatVersion).toBe(1);
    expect(document.result.rows.length).toBeGreaterThan(0);
    const refused = hushwright(['rank', written('bad.yaml', 'title: 1\n'), '--json']);
    expect(refused.code).toBe(2);
    expect(JSON.parse(refused.out).result.problems.length).toBeGreaterThan(0);
  });

  it('writes no escape codes into a pipe or with NO_COLOR, and colours when told to', () => {
    const escapeCode = String.fromCharCode(27);
    expect(hushwright(['rank', charger]).out).not.toContain(escapeCode);
    expect(hushwright(['rank', charger], undefined, { NO_COLOR: '1' }).out).not.toContain(escapeCode);
    expect(hushwright(['rank', charger], undefined, { FORCE_COLOR: '1' }).out).toContain(escapeCode);
    expect(hushwright(['rank', charger, '--no-color'], undefined, { FORCE_COLOR: '1' }).out).not.toContain(
      escape,
    );
  });

  it('takes an early end of the reader calmly', () => {
    const run = spawnSync(
      'bash',
      ['-c', `${process.execPath} ${program} rank ${charger} | head -1; echo "\${PIPESTATUS[0]}"`],
      { cwd: resolve(import.meta.dirname, '../..') },
    );
    expect(run.stdout.toString()).toMatch(/quietest adequate builds\n0\n$/);
    expect(run.stderr.toString()).toBe('');
  });
});

describe('the version', () => {
  it('is that of the package', () => {
    const text = readFileSync(resolve(import.meta.dirname, '../../package.json'), 'utf8');
    expect(VERSION).toBe(JSON.parse(text).version);
    expect(hushwright(['--version']).out.trim()).toBe(VERSION);
  });
});

describe('a time limit', () => {
  it('shows the best so far and says that it is not proved', () => {
    const run = hushwright(['rank', 'scenarios/desk-scanner.yaml', '--top', '1000', '--time-limit', '0.2']);
    expect(run.code).toBe(0);
    expect(run.out).toMatch(/stopped/i);
  });

  it('shows a build that holds every limit even where none was found in time', () => {
    const run = hushwright(['rank', 'scenarios/desk-scanner.yaml', '--time-limit', '0.001', '--json']);
    const { result } = JSON.parse(run.out);
    expect(run.code).toBe(0);
    expect(result.complete).toBe(false);
    expect(result.rows[0].outcome.adequate).toBe(true);
  });
});
