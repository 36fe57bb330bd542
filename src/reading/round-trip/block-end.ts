import {
  COLLECTION_STYLE,
  EVENT_ID,
  type Event,
  getScalarValue,
  SCALAR_STYLE,
  type ScalarEvent,
} from 'js-yaml';

/** A map in a text: where it begins, and where its last entry ends. */
export interface MapPlace {
  /** Offset of its first key, or of its bracket. */
  readonly start: number;
  /** Offset behind its last value; behind the bracket of an empty map. */
  readonly end: number;
  /** Whether it is written between brackets. */
  readonly flow: boolean;
  readonly empty: boolean;
}

/** Offset behind white space, comments and commas. */
function behindBlanks(text: string, from: number): number {
  const blank = /(?:[\s,]|#[^\r\n]*)*/y;
  blank.lastIndex = from;
  return from + (blank.exec(text)?.[0].length ?? 0);
}

/** Offset behind some closing brackets. */
function behindBrackets(text: string, from: number, count: number): number {
  let at = from;
  for (let left = count; left > 0; left--) at = behindBlanks(text, at) + 1;
  return at;
}

/** Index of the event behind a whole value. */
function behindValue(events: readonly Event[], from: number): number {
  let depth = 0;
  for (let index = from; index < events.length; index++) {
    const event = events[index];
    if (event?.type === EVENT_ID.MAPPING || event?.type === EVENT_ID.SEQUENCE) depth++;
    if (event?.type === EVENT_ID.POP) depth--;
    if (depth === 0) return index + 1;
  }
  return events.length;
}

/** Offset behind a scalar with its quotation marks; none if there is nothing to see of it. */
function scalarEnd(event: ScalarEvent): number {
  const quoted = event.style === SCALAR_STYLE.SINGLE_QUOTED || event.style === SCALAR_STYLE.DOUBLE_QUOTED;
  return event.valueEnd + (quoted ? 1 : 0);
}

/** Offset behind everything a run of events holds, the last bracket left out that the run does not open. */
function endOf(text: string, events: readonly Event[], start: number): number {
  const open: boolean[] = [];
  let end = start;
  // Brackets that close behind the last thing that has a place.
  let closed = 0;
  const seen = (at: number): void => {
    end = at;
    closed = 0;
  };
  for (const event of events) {
    switch (event.type) {
      case EVENT_ID.MAPPING:
      case EVENT_ID.SEQUENCE:
        open.push(event.style === COLLECTION_STYLE.FLOW);
        if (open.at(-1)) seen(event.start + 1);
        break;
      case EVENT_ID.POP:
        if (open.pop()) closed++;
        break;
      case EVENT_ID.SCALAR:
        if (event.valueEnd > end) seen(scalarEnd(event));
        break;
      default:
    }
  }
  return behindBrackets(text, end, closed);
}

/**
 * Where a map stands.
 *
 * @param text of the file
 * @param events of it
 * @param index of the event the map begins with
 * @returns undefined if there is no map
 */
export function mapAt(text: string, events: readonly Event[], index: number): MapPlace | undefined {
  const event = events[index];
  if (event?.type !== EVENT_ID.MAPPING) return undefined;
  const flow = event.style === COLLECTION_STYLE.FLOW;
  const inner = events.slice(index + 1, behindValue(events, index) - 1);
  const start = event.start;
  return { start, flow, empty: inner.length === 0, end: endOf(text, inner, flow ? start + 1 : start) };
}

/**
 * Index of the event with which the value of a key begins.
 *
 * @param text of the file
 * @param events of it
 * @param map index of the event the map begins with
 * @param key of the map
 * @returns undefined if the map has no such key
 */
export function valueIndex(
  text: string,
  events: readonly Event[],
  map: number,
  key: string,
): number | undefined {
  for (let at = map + 1; at < events.length && events[at]?.type !== EVENT_ID.POP; ) {
    const event = events[at];
    const value = behindValue(events, at);
    if (event?.type === EVENT_ID.SCALAR && getScalarValue(text, event) === key) return value;
    at = behindValue(events, value);
  }
  return undefined;
}
