import stringWidth from 'string-width';
import { printable } from './printable.ts';

/** Spaces at which a line may break: not those that group the digits of a number. */
const BREAK = /(?<!\d) +| +(?!\d{3}(?!\d))/;

/**
 * Breaks a text into lines, at spaces where that is possible, else within a word.
 *
 * @param text one paragraph; unprintable characters are replaced
 * @param width most columns of a line, ≥ 1; undefined for one line of any length
 * @returns at least one line
 */
export function wrapped(text: string, width?: number): readonly string[] {
  const clean = printable(text);
  if (width === undefined || stringWidth(clean) <= width) return [clean];
  const lines: string[] = [];
  let line = '';
  for (const word of clean.split(BREAK)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (stringWidth(longer) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = cut(word, width);
    line = pieces.pop() ?? '';
    lines.push(...pieces);
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line];
}

/** Pieces of a word no wider than a line; a character wider than the line stands alone. */
function cut(word: string, width: number): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && stringWidth(piece + letter) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}
