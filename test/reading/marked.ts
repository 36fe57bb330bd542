/** A text with the places of its marks, found by counting and not by the code under test. */
export interface Marked {
  readonly text: string;
  /** Line and column of each mark, from 1, in order. */
  readonly places: readonly (readonly [number, number])[];
}

/**
 * Takes the marks "¦" out of a text. Each stands right before the place it marks.
 *
 * @param marked text with marks
 */
export function unmarked(marked: string): Marked {
  const places: [number, number][] = [];
  const lines = marked.split('\n').map((line, index) => {
    const pieces = line.split('¦');
    let column = 1;
    for (const piece of pieces.slice(0, -1)) {
      column += [...piece].length;
      places.push([index + 1, column]);
    }
    return pieces.join('');
  });
  return { text: lines.join('\n'), places };
}

/**
 * Replaces a piece of a text that must be there once.
 *
 * @param text to change
 * @param from piece that stands in it exactly once
 * @param to what to put there
 */
export function changed(text: string, from: string, to: string): string {
  const [before, after, ...more] = text.split(from);
  if (before === undefined || after === undefined || more.length > 0)
    throw new Error(`"${from}" is not there once`);
  return before + to + after;
}
