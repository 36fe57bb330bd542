import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { explained } from './dependencies.ts';
import { textOf } from './source-text.ts';

const manifest = z.object({
  dependencies: z.record(z.string(), z.string()),
  devDependencies: z.record(z.string(), z.string()),
});

const { dependencies, devDependencies } = manifest.parse(JSON.parse(textOf('package.json')));
const wanted = { ...dependencies, ...devDependencies };

describe('every package the project uses', () => {
  it('is explained once in DEVELOPERS.md, and no other', () => {
    expect([...explained(textOf('DEVELOPERS.md'))].sort()).toEqual(Object.keys(wanted).sort());
  });

  it('is pinned to one version', () => {
    const loose = Object.entries(wanted).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version));
    expect(loose).toEqual([]);
  });
});

describe('the reader of the table', () => {
  const document = [
    '# Tools',
    '| `knip` | is not under the right heading |',
    '## Dependencies',
    '| package | what for |',
    '|---|---|',
    '| `zod` | forms of what is read |',
    '| `@types/node` | types of Node |',
    '| `yargs` | |',
    '### Dependencies of the tests',
    '| `fast-check` | properties |',
    '## Tests',
    '| `vitest` | is not under the right heading |',
  ].join('\n');

  it('takes rows with a package and a reason, under its headings only', () => {
    expect(explained(document)).toEqual(['zod', '@types/node', 'fast-check']);
  });
});
