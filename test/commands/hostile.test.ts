import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, openSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { program, scenarioText } from './program.ts';

// What must hold is derived from what files are for: a file from a stranger is refused or read, soon, in little memory,
// and leaves nothing behind. The limits are those the project promises; processor time is measured, since the time on
// the wall depends on what else the machine does.

const SECONDS = 2;
const MEGABYTES = 512;

/** Tells at the end how much time and memory a run took. */
const GAUGE = `data:text/javascript,process.on('exit',()=>{const u=process.resourceUsage();process.stderr.write('\\n@'+(u.userCPUTime+u.systemCPUTime)/1e6+' '+u.maxRSS/1024)})`;

interface Gauged {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
  readonly seconds: number;
  readonly megabytes: number;
}

function gauged(folder: string, args: readonly string[], stdin: number | 'ignore' = 'ignore'): Gauged {
  const run = spawnSync(process.execPath, ['--import', GAUGE, program, ...args], {
    cwd: folder,
    stdio: [stdin, 'pipe', 'pipe'],
    timeout: 30_000,
  });
  const err = run.stderr.toString('utf8');
  const [, seconds = Number.NaN, megabytes = Number.NaN] = /@([\d.]+) ([\d.]+)$/.exec(err) ?? [];
  return {
    code: run.status,
    out: run.stdout.toString('utf8'),
    err,
    seconds: Number(seconds),
    megabytes: Number(megabytes),
  };
}

function expectCheap({ seconds, megabytes }: Gauged): void {
  expect(seconds).toBeLessThan(SECONDS);
  expect(megabytes).toBeLessThan(MEGABYTES);
}

const DEEP = 100_000;
const text = scenarioText('desk-scanner');

/** Text of UTF-16, with or without its mark. */
function utf16(content: string, mark: boolean): Buffer {
  return Buffer.from(`${mark ? '\uFEFF' : ''}${content}`, 'utf16le');
}

/** Lists of nine aliases of the list before: nine to the power of nine values if they were followed. */
const bomb = [
  'a: &a [x]',
  ...[...'bcdefghij'].map((name, at) => {
    const before = 'abcdefghi'[at];
    return `${name}: &${name} [${Array.from({ length: 9 }, () => `*${before}`).join(', ')}]`;
  }),
].join('\n');

/** Files that cannot be read, and a word of what is said of each. */
const refused: readonly (readonly [string, string | Buffer, string])[] = [
  ['bomb.yaml', bomb, 'aliases'],
  ['cycle.yaml', 'a: &a [*a]\n', 'aliases'],
  ['merge.yaml', 'a: &a { x: 1 }\nb: { <<: *a }\n', 'aliases'],
  ['deep-lists.yaml', '['.repeat(DEEP), 'nested more than'],
  ['deep-maps.yaml', '{a: '.repeat(DEEP), 'nested more than'],
  ['deep-dashes.yaml', `${'- '.repeat(DEEP)}x`, 'nested more than'],
  ['deep-questions.yaml', `${'? '.repeat(DEEP)}x`, 'nested more than'],
  ['huge.yaml', Buffer.alloc(50_000_000, '#'), 'larger than 10 MB'],
  ['many-keys.yaml', Array.from({ length: 700_000 }, (_, at) => `k${at}:`).join('\n'), 'too large'],
  ['long-line.yaml', `title: ${'x'.repeat(9_000_000)}`, 'too large'],
  ['nul.yaml', `${text.slice(0, 200)}\0${text.slice(200)}`, 'not a text file in UTF-8'],
  ['utf16.yaml', utf16(text, true), 'UTF-16'],
  ['utf16-plain.yaml', utf16(text, false), 'UTF-16'],
  ['latin1.yaml', Buffer.from(text, 'latin1'), 'not a text file in UTF-8'],
  ['tags.yaml', 'a: !!js/function "function () {}"\n', 'unknown'],
  ['prototype.yaml', '__proto__: { polluted: true }\n', 'there is no key "__proto__"'],
];

describe('files from strangers', () => {
  const folder = mkdtempSync(join(tmpdir(), 'hushwright-hostile-'));
  for (const [name, content] of refused) writeFileSync(join(folder, name), content);
  writeFileSync(join(folder, 'box.yaml'), text);
  symlinkSync('/dev/zero', join(folder, 'device.yaml'));
  symlinkSync('circle.yaml', join(folder, 'circle.yaml'));
  symlinkSync('nowhere', join(folder, 'broken.yaml'));
  mkdirSync(join(folder, 'folder.yaml'));
  const links: readonly (readonly [string, string])[] = [
    ['device.yaml', 'this is no ordinary file'],
    ['circle.yaml', 'go round in circles'],
    ['broken.yaml', 'there is no such file'],
    ['folder.yaml', 'this is no ordinary file'],
  ];
  const before = readdirSync(folder).toSorted();

  it('as catalogs are all refused, each with its reason, soon and in little memory', () => {
    // All in one run: what takes little together takes little alone. A folder is read file by file.
    const run = gauged(folder, ['check', 'box.yaml', '--catalog', folder]);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    const told = run.err.split('\n').filter((line) => line.startsWith(folder));
    for (const [name, , words] of [...refused, ...links.map(([name, words]) => [name, '', words] as const)]) {
      const lines = told.filter((line) => line.startsWith(join(folder, `${name}:`)));
      expect(lines.join('\n'), name).toContain(words);
    }
    expect(run.err).not.toMatch(/\n\s+at /);
    expectCheap(run);
  });

  // A scenario may be shorter than a catalog, so that these are refused before they are parsed.
  it.each([
    ['bomb.yaml', 'aliases'],
    ['deep-maps.yaml', 'too large'],
    ['long-line.yaml', 'too large'],
    ['device.yaml', 'this is no ordinary file'],
  ])('as a scenario: %s', (name, words) => {
    const run = gauged(folder, ['check', name]);
    expect(run.code).toBe(2);
    expect(run.err).toContain(words);
    expectCheap(run);
  });

  it('standard input without an end is given up', () => {
    const zero = openSync('/dev/zero', 'r');
    const run = gauged(folder, ['check', '-'], zero);
    expect(run.code).toBe(2);
    expect(run.err).toContain('larger than 10 MB');
    expectCheap(run);
  });

  it('mixed line ends and a byte order mark do no harm', () => {
    const mixed = text.split('\n').map((line, at) => line + ['\n', '\r\n', '\r'][at % 3]);
    writeFileSync(join(folder, 'mixed.txt'), `\uFEFF${mixed.join('')}`);
    const run = gauged(folder, ['check', 'mixed.txt']);
    expect(run.code, run.err).toBe(0);
    expect(run.out).toContain('no problems in mixed.txt: Film scanner');
  });

  it('a table that climbs out of its folder, or is no table, writes nothing', () => {
    const head = 'fan,size mm,depth mm,flow CFM,pressure Pa,level dBA,rpm';
    writeFileSync(join(folder, 'climb.csv'), `${head}\n../../etc/x,80,25,32,18,24,2000\n`);
    writeFileSync(join(folder, 'quote.csv'), `${head}\n"${'x\n'.repeat(900_000)}`);
    writeFileSync(join(folder, 'wide.csv'), `${head}\n${','.repeat(1_900_000)}`);
    const run = gauged(folder, ['fans', '--from', 'climb.csv', '--from', 'quote.csv', '--from', 'wide.csv']);
    expect(run.code).toBe(2);
    expect(run.out).toContain('fan: etc-x');
    expect(run.err).toContain('quote.csv:');
    expectCheap(run);
    const refusal = gauged(folder, ['fans', '--from', 'climb.csv', '--to', join('nowhere', 'fans.yaml')]);
    expect(refusal.code).toBe(2);
    expect(refusal.err).toContain('there is no such folder');
  });

  it('nothing is left behind', () => {
    const own = ['climb.csv', 'mixed.txt', 'quote.csv', 'wide.csv'];
    const after = readdirSync(folder).filter((name) => !own.includes(name));
    expect(after.toSorted()).toEqual(before);
  });
});
