/**
 * Number of single-character edits (insert, delete, replace, swap of neighbours) between two words [-].
 *
 * Source: optimal string alignment distance, G. Navarro, "A guided tour to approximate string matching",
 * ACM Computing Surveys 33 (2001) (from memory).
 *
 * @param one a word, any text
 * @param other another word, any text
 */
export function editDistance(one: string, other: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: other.length + 1 }, (_, column) => column);
  for (let row = 1; row <= one.length; row++) {
    const current = [row];
    for (let column = 1; column <= other.length; column++) {
      const same = one[row - 1] === other[column - 1];
      const replaced = at(last, column - 1) + (same ? 0 : 1);
      let best = Math.min(replaced, at(last, column) + 1, at(current, column - 1) + 1);
      if (row > 1 && column > 1 && one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1]) {
        best = Math.min(best, at(beforeLast, column - 2) + 1);
      }
      current.push(best);
    }
    beforeLast = last;
    last = current;
  }
  return at(last, other.length);
}

/**
 * The known name a misspelt one most likely stands for: at most a third of its letters differ and at least
 * one is right. Case is ignored; of equally near names the first known one wins.
 *
 * @param word as written
 * @param known names that would be right
 * @returns one of `known`, or undefined if none is near
 */
export function nearestName(word: string, known: readonly string[]): string | undefined {
  // Nobody misspells a name by writing a page; comparing one would only cost time.
  if (word.length > 100) return undefined;
  const limit = Math.ceil(word.length / 3);
  let nearest: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const name of known) {
    if (Math.abs(name.length - word.length) > limit) continue;
    const distance = editDistance(word.toLowerCase(), name.toLowerCase());
    const shared = distance < Math.max(word.length, name.length);
    if (shared && distance <= limit && distance < least) {
      nearest = name;
      least = distance;
    }
  }
  return nearest;
}

function at(row: readonly number[], column: number): number {
  return row[column] ?? Number.POSITIVE_INFINITY;
}
