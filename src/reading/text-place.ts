/** A place in a text as people count. */
export interface TextPlace {
  /** From 1. */
  readonly line: number;
  /** From 1, in characters. */
  readonly column: number;
  readonly sourceLine: string;
}

const BREAK = /\r\n|\n|\r/g;

/**
 * Offsets at which the lines of a text begin.
 *
 * @param text any text
 */
export function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (const match of text.matchAll(BREAK)) starts.push(match.index + match[0].length);
  return starts;
}

/**
 * Line and column of an offset.
 *
 * @param text any text
 * @param offset into it [UTF-16 units], 0 … length
 * @param starts of its lines, if many places of one text are asked for
 */
export function placeIn(
  text: string,
  offset: number,
  starts: readonly number[] = lineStarts(text),
): TextPlace {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  const start = starts[low] ?? 0;
  const sourceLine = text.slice(start, starts[low + 1] ?? text.length).replace(/[\r\n]+$/, '');
  return { line: low + 1, column: [...text.slice(start, offset)].length + 1, sourceLine };
}
