import { describe, expect, it } from 'vitest';
import { planFaults, planLeftovers } from './import-plan.ts';
import { filesBelow } from './source-text.ts';

const files = filesBelow('src').map(({ path, text }) => ({ path: path.slice('src/'.length), text }));

function faultsOf(path: string, text: string): readonly string[] {
  return planFaults([{ path, text }]);
}

describe('the plan of the house', () => {
  it('is kept by every file', () => {
    expect(files.length).toBeGreaterThan(100);
    expect(planFaults(files)).toEqual([]);
  });

  it('promises nothing that nobody needs', () => {
    expect(planLeftovers(files)).toEqual([]);
  });

  it.each([
    ['a room above', "import { rank } from '../search/rank.ts';", 'leans on search/rank.ts'],
    ['a type from above', "import type { Rank } from '../search/rank.ts';", 'leans on search/rank.ts'],
    ['a re-export', "export { rank } from '../search/rank.ts';", 'leans on search/rank.ts'],
    ['a re-export of all', "export * from '../search/rank.ts';", 'leans on search/rank.ts'],
    ['an import on demand', "const late = await import('../search/rank.ts');", 'leans on search/rank.ts'],
    ['a type on demand', "type Late = import('../search/rank.ts').Rank;", 'leans on search/rank.ts'],
    ['an import for its effect', "import '../search/rank.ts';", 'leans on search/rank.ts'],
    [
      'a computed import',
      'const late = await import(name);',
      'imports a name that is only known when it runs',
    ],
    [
      'a template with a hole',
      'const late = await import(`../air/$' + '{name}`);',
      'imports a name that is only known when it runs',
    ],
    [
      'a neighbour of the same storey',
      "import { level } from '../sound/levels.ts';",
      'leans on sound/levels.ts',
    ],
    [
      'a room nobody drew',
      "import { pad } from '../utils/pad.ts';",
      'leans on utils/pad.ts, which is not on the plan',
    ],
    ['a file outside src', "import data from '../../package.json';", 'leaves src for ../../package.json'],
    ['a package of other rooms', "import { load } from 'js-yaml';", 'may not use js-yaml'],
    ['a part of such a package', "import { z } from 'zod/v4';", 'may not use zod'],
    ['Node', "import { readFileSync } from 'node:fs';", 'may not use node:'],
    ['Node without its prefix', "import { readFileSync } from 'fs';", 'may not use fs'],
  ])('sees %s', (_, text, fault) => {
    expect(faultsOf('heat/mixing.ts', text)).toEqual([`heat/mixing.ts ${fault}`]);
  });

  it('sees a room that is not drawn', () => {
    expect(faultsOf('utils/pad.ts', '')).toEqual(['utils/pad.ts is not on the plan']);
  });

  it('gives a package to one file of a room only', () => {
    expect(faultsOf('quantities/units.ts', "import { z } from 'zod';")).toHaveLength(1);
    expect(faultsOf('quantities/written.ts', "import { z } from 'zod';")).toEqual([]);
  });

  it('lets a room lean on itself and on lower storeys', () => {
    const text = "import { a } from './level.ts'; import type { Air } from '../air/air.ts';";
    expect(faultsOf('heat/mixing.ts', text)).toEqual([]);
  });

  it('does not take words in comments and strings for imports', () => {
    const text = "// import { a } from '../search/rank.ts';\nexport const note = \"import x from 'y'\";";
    expect(faultsOf('heat/mixing.ts', text)).toEqual([]);
  });

  it('sees a file that does not parse', () => {
    expect(() => faultsOf('heat/mixing.ts', 'export function (')).toThrow(SyntaxError);
  });
});
