import { EVENT_ID, type Event, getScalarValue, SCALAR_STYLE, type ScalarEvent } from 'js-yaml';
import type { Path } from './problem.ts';
import type { YamlSource } from './yaml-source.ts';

/** Where a part of a document stands in its text; offsets count from the start of the text. */
interface Node {
  /** Offset of the value; undefined for an empty one. */
  readonly start: number | undefined;
  readonly children: Map<string, { readonly key: number | undefined; readonly value: Node }>;
}

/** Finds the offset of a key or value; a path that leads nowhere ends at the key nearest to it. */
export type SourceMap = (path: Path, at: 'key' | 'value') => number;

/**
 * Places of all keys and values of a document. Takes about as long as reading it, so it is made only when there
 * is a problem to be placed.
 *
 * @param source as read
 */
export function sourceMap(source: YamlSource): SourceMap {
  const root = readNode({ text: source.text, events: source.events, next: 1 });
  return (path, at) => find(root, path, at);
}

function find(root: Node, path: Path, at: 'key' | 'value'): number {
  let node = root;
  let key = root.start ?? 0;
  for (const [index, step] of path.entries()) {
    const child = node.children.get(String(step));
    // What is missing is shown at the key, or list item, that lacks it.
    if (!child) return key;
    key = child.key ?? child.value.start ?? key;
    node = child.value;
    if (index === path.length - 1 && at === 'value') return node.start ?? key;
  }
  return path.length === 0 ? (root.start ?? 0) : key;
}

interface Cursor {
  readonly text: string;
  readonly events: readonly Event[];
  next: number;
}

function readNode(cursor: Cursor): Node {
  const event = cursor.events[cursor.next++];
  const children: Node['children'] = new Map();
  switch (event?.type) {
    case EVENT_ID.MAPPING:
      while (!atEnd(cursor)) {
        const name = keyName(cursor);
        const key = readNode(cursor).start;
        children.set(name, { key, value: readNode(cursor) });
      }
      return { start: event.start, children };
    case EVENT_ID.SEQUENCE:
      for (let index = 0; !atEnd(cursor); index++) {
        children.set(String(index), { key: undefined, value: readNode(cursor) });
      }
      return { start: event.start, children };
    case EVENT_ID.SCALAR:
      return { start: scalarStart(cursor.text, event), children };
    default:
      return { start: undefined, children };
  }
}

function atEnd(cursor: Cursor): boolean {
  const event = cursor.events[cursor.next];
  if (event !== undefined && event.type !== EVENT_ID.POP) return false;
  cursor.next++;
  return true;
}

function keyName(cursor: Cursor): string {
  const event = cursor.events[cursor.next];
  return event?.type === EVENT_ID.SCALAR ? getScalarValue(cursor.text, event) : '';
}

/** The sign with which a text of several lines begins, at the end of its line. */
const BLOCK_SIGN = /[|>][+\-\d]*[ \t]*(?:[ \t]#[^\r\n]*)?(?:\r\n|\n|\r)$/;

function scalarStart(text: string, { style, valueStart }: ScalarEvent): number | undefined {
  if (valueStart < 0) return undefined;
  if (style === SCALAR_STYLE.LITERAL_BLOCK || style === SCALAR_STYLE.FOLDED_BLOCK) {
    const line = text.slice(0, valueStart).search(BLOCK_SIGN);
    return line < 0 ? valueStart : line;
  }
  const quoted = style === SCALAR_STYLE.SINGLE_QUOTED || style === SCALAR_STYLE.DOUBLE_QUOTED;
  return quoted ? valueStart - 1 : valueStart;
}
