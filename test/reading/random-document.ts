/** Whole numbers from a seed: a linear congruential generator (Numerical Recipes, from memory: 1664525, 1013904223). */
export function seededBelow(seed: number): (limit: number) => number {
  let state = seed >>> 0;
  return (limit) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * limit);
  };
}

const WORDS = [
  '120 mm',
  '12',
  'hot day',
  '°C',
  'true',
  'x: y',
  'a, b',
  "it's",
  '12 CFM',
  '🙂 fan',
  '#1',
  'ö',
];
const KEYS = ['a', 'fan', 'side-gap', 'hold floor', 'ö', '🙂', 'x y', 'true', '7'];

/** Texts that may stand without quotation marks anywhere. */
const PLAIN = /^[\p{L}\d°][\p{L}\d °-]*$/u;

/**
 * The text of a YAML document: block and flow maps and lists, plain, quoted and folded texts, comments, blank lines,
 * several depths of indentation and all line ends.
 *
 * @param seed of its randomness
 */
export function randomDocument(seed: number): string {
  const below = seededBelow(seed);
  const chance = (percent: number): boolean => below(100) < percent;
  const pick = (from: readonly string[]): string => from[below(from.length)] ?? '';
  const step = 1 + below(4);

  function scalar(text: string): string {
    if (PLAIN.test(text) && chance(60)) return text;
    return chance(50) ? `'${text.replaceAll("'", "''")}'` : JSON.stringify(text);
  }

  function keysFor(count: number): readonly string[] {
    return [...new Set(Array.from({ length: count }, () => pick(KEYS)))];
  }

  function gap(): string {
    return chance(20) ? '  ' : ' ';
  }

  function flow(depth: number): string {
    const kind = depth > 2 ? 0 : below(4);
    if (kind < 2) return scalar(pick(WORDS));
    const space = chance(70) ? ' ' : '';
    const trailing = chance(10) ? ',' : '';
    if (kind === 2) {
      const items = Array.from({ length: below(3) }, () => flow(depth + 1));
      return items.length === 0 ? `[${space}]` : `[${space}${items.join(`,${space}`)}${trailing}${space}]`;
    }
    const entries = keysFor(below(3)).map((key) => `${scalar(key)}:${gap()}${flow(depth + 1)}`);
    return entries.length === 0 ? `{${space}}` : `{${space}${entries.join(`,${space}`)}${trailing}${space}}`;
  }

  function comment(): string {
    return chance(15) ? ` # ${pick(WORDS)}` : '';
  }

  function between(indent: string): string {
    if (chance(8)) return '\n';
    return chance(8) ? `${indent}# ${pick(WORDS)}\n` : '';
  }

  /** A value behind a key or a dash, with the line it ends. */
  function value(indent: string, depth: number): string {
    if (depth > 1 || chance(45)) return `${gap()}${flow(depth)}${comment()}\n`;
    if (chance(8))
      return `${gap()}${pick(['|', '>', '|-', '> # |'])}\n${indent}${' '.repeat(step)}folded text\n`;
    return `${comment()}\n${block(`${indent}${' '.repeat(step)}`, depth + 1)}`;
  }

  function block(indent: string, depth: number): string {
    const count = 1 + below(depth === 0 ? 3 : 2);
    if (chance(40)) {
      return Array.from({ length: count }, () => `${between(indent)}${indent}-${value(indent, depth)}`).join(
        '',
      );
    }
    return keysFor(count)
      .map((key) => `${between(indent)}${indent}${scalar(key)}:${value(indent, depth)}`)
      .join('');
  }

  const text = chance(85) ? block('', 0) : `${flow(0)}\n`;
  const end = ['\n', '\n', '\r\n'][below(3)] ?? '\n';
  return text.replaceAll('\n', end);
}
