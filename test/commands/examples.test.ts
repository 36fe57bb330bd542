import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { calls } from '../../src/arguments/calls.ts';
import { declaredOptions } from '../readme/command-line.ts';
import { program } from './program.ts';

const root = resolve(import.meta.dirname, '../..');

/** One fan for each place, so that a ranking takes no time. */
const FEW: readonly (readonly [RegExp, string])[] = [
  [/((?:push|pull): \{ fans: )catalog(, count: 1, empty: allowed \})/g, '$1FANS$2'],
  [/(exit: \{ fans: )catalog/g, '$1[f80-25-b]'],
];

/** The shipped scenarios with fewer fans to choose from, and the files that examples call by names of their own. */
function workplace(): string {
  const folder = mkdtempSync(join(tmpdir(), 'hushwright-'));
  cpSync(join(root, 'scenarios'), join(folder, 'scenarios'), { recursive: true });
  for (const [name, fans] of [
    ['desk-scanner', '[s92-15-b]'],
    ['shelf-charger', '[s40-10-d]'],
  ] as const) {
    const file = join(folder, 'scenarios', `${name}.yaml`);
    const text = readFileSync(file, 'utf8');
    const few = FEW.reduce((result, [from, to]) => result.replace(from, to), text).replaceAll('FANS', fans);
    expect(few).not.toBe(text);
    writeFileSync(file, few);
  }
  cpSync(join(folder, 'scenarios', 'shelf-charger.yaml'), join(folder, 'box.yaml'));
  writeFileSync(
    join(folder, 'shop.csv'),
    'name;size;depth;speed;flow;pressure;level;price\r\nshop-80;80 mm;25 mm;2000 rpm;50 m³/h;20 Pa;24 dB(A);9\r\n',
  );
  return folder;
}

describe('the examples of the help', () => {
  const { examples } = declaredOptions(calls);
  const folder = workplace();

  it('are there for every command that asks something', () => {
    const asked = examples.map((line) => line.split(' ')[1]);
    expect(new Set(asked).size).toBeGreaterThan(9);
  });

  // A file is made before it is used: the example of `new` writes one that others may call by the same name.
  it.each(examples)('%s', (line) => {
    const fresh = /\bnew box\.yaml/.test(line) ? mkdtempSync(join(tmpdir(), 'hushwright-')) : folder;
    const run = spawnSync('bash', ['-c', line.replace('$0', `'${process.execPath}' '${program}'`)], {
      cwd: fresh,
      env: { ...process.env, FORCE_COLOR: undefined, NO_COLOR: undefined },
    });
    const err = run.stderr.toString('utf8');
    expect(err).not.toMatch(/\n\s+at |internal error|Unknown argument/);
    // Something is answered; that nothing is adequate is an answer too.
    expect([0, 1], err).toContain(run.status);
    const quiet = /--to |> |\bnew /.test(line);
    expect(quiet || run.stdout.length > 0, line).toBe(true);
  });
});
