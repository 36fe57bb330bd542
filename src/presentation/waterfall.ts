import type { PartOutcome } from '../enclosure/outcome.ts';
import type { KelvinDifference } from '../quantities/dimensions.ts';
import type { CellLine } from './column.ts';

/** Columns of the longest bar. */
const LENGTH = 24;
const STEP = '█';
const SUM = '▒';
/** A step too small for a bar. */
const HAIR = '▏';

/** A bar from one height to another, both in columns. */
function bar(from: number, to: number, mark: string): string {
  const [low, high] = from <= to ? [from, to] : [to, from];
  return `${' '.repeat(low)}${high > low ? mark.repeat(high - low) : HAIR}`;
}

function barsOf({ rise }: PartOutcome, scale: number): readonly CellLine[] {
  const lines: string[] = [bar(0, 0, STEP)];
  let height: KelvinDifference = 0;
  let from = 0;
  for (const { amount } of rise) {
    height += amount;
    const to = Math.max(0, Math.round(height * scale));
    lines.push(bar(from, to, STEP));
    from = to;
  }
  return [...lines, bar(0, from, SUM)];
}

/**
 * Where the degrees of each part come from, as a picture: a step begins where the one before it ended, the sum begins at
 * the room. One scale for all parts, so that they can be compared.
 *
 * @param parts of a duty
 * @returns for each part a bar for the room, one a step and one for the sum; empty bars if a temperature is not finite
 */
export function waterfall(parts: readonly PartOutcome[]): readonly (readonly CellLine[])[] {
  const heights = parts.flatMap(({ rise }) => {
    let height = 0;
    return rise.map(({ amount }) => {
      height += amount;
      return height;
    });
  });
  const most = Math.max(0, ...heights);
  if (!(most > 0 && Number.isFinite(most))) return parts.map(({ rise }) => ['', '', ...rise.map(() => '')]);
  return parts.map((part) => barsOf(part, LENGTH / most));
}
