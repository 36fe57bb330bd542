import { describe, expect, it } from 'vitest';
import { LIMITS, oversize } from './sizes.ts';
import { filesBelow } from './source-text.ts';

function lines(count: number): string {
  return 'export {};\n'.repeat(count);
}

describe('files and folders', () => {
  it('are small enough to read', () => {
    const files = filesBelow('src');
    expect(files.length).toBeGreaterThan(100);
    expect(oversize(files)).toEqual([]);
  });
});

describe('the check of sizes', () => {
  it('sees a file that is a line too long', () => {
    expect(oversize([{ path: 'src/air/air.ts', text: lines(LIMITS.lines) }])).toEqual([]);
    expect(oversize([{ path: 'src/air/air.ts', text: lines(LIMITS.lines + 1) }])).toEqual([
      `src/air/air.ts has ${LIMITS.lines + 1} lines`,
    ]);
  });

  it('counts a last line without an end', () => {
    expect(oversize([{ path: 'src/air/air.ts', text: `${lines(LIMITS.lines)}//` }])).toHaveLength(1);
  });

  it('sees a folder with a file too many', () => {
    const files = Array.from({ length: LIMITS.files + 1 }, (_, index) => ({
      path: `src/air/part-${index}.ts`,
      text: '',
    }));
    expect(oversize(files.slice(1))).toEqual([]);
    expect(oversize(files)).toEqual([`src/air holds ${LIMITS.files + 1} files`]);
  });
});
