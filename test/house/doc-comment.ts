/** A doc comment taken apart. */
export interface DocComment {
  /** Everything outside the tags. */
  readonly prose: string;
  /** Text behind each `@param`, by its name, in the order written. */
  readonly parameters: ReadonlyMap<string, string>;
  /** Text behind `@returns`; empty if there is none. */
  readonly returns: string;
}

interface Tag {
  readonly name: string;
  readonly lines: string[];
}

const tagStart = /^@(\w+)\s*(.*)$/;

function textOf(tag: Tag): string {
  return tag.lines.join(' ').trim();
}

/**
 * Takes a doc comment apart. A tag ends at the next tag, at an empty line, or at a line that names a source.
 *
 * @param comment what stands between the signs that open and close it
 */
export function docComment(comment: string): DocComment {
  const prose: string[] = [];
  const tags: Tag[] = [];
  let lines = prose;
  for (const raw of comment.split('\n')) {
    const line = raw.replace(/^\s*\*?\s?/, '').trimEnd();
    const [, name, text = ''] = tagStart.exec(line) ?? [];
    if (name !== undefined) {
      lines = [text];
      tags.push({ name, lines });
    } else {
      if (line === '' || line.startsWith('Source:')) lines = prose;
      lines.push(line);
    }
  }
  const parameters = new Map<string, string>();
  for (const tag of tags.filter(({ name }) => name === 'param')) {
    const [name = '', ...words] = textOf(tag).split(/\s+/);
    parameters.set(name, words.join(' '));
  }
  const returns = tags.find(({ name }) => name === 'returns');
  return { prose: prose.join('\n').trim(), parameters, returns: returns ? textOf(returns) : '' };
}
