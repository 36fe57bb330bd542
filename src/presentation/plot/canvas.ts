/** Dots across and down one character of braille. */
const ACROSS = 2;
const DOWN = 4;
/** First character of braille, without dots. */
const BLANK = 0x2800;
/** Bit of each dot, by row and column. Source: Unicode, block Braille Patterns. */
const BITS: readonly (readonly number[])[] = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
];

/** A rectangle of characters to draw on; marks stand over lines. */
export interface Canvas {
  readonly columns: number;
  readonly rows: number;
  /** Draws a line between two points, each from 0 to 1 across and up. */
  readonly line: (from: CanvasPoint, to: CanvasPoint) => void;
  /** Puts a character on a point. */
  readonly mark: (at: CanvasPoint, character: string) => void;
  /** Draws a dotted line down the whole height. */
  readonly upright: (across: number) => void;
  readonly lines: () => readonly string[];
}

/** A point of a canvas: 0 to 1 from left to right and from bottom to top. */
export interface CanvasPoint {
  readonly across: number;
  readonly up: number;
}

function clamped(value: number, most: number): number {
  return Math.min(most, Math.max(0, Math.round(value)));
}

/**
 * An empty canvas.
 *
 * @param columns characters across [-], ≥ 1
 * @param rows characters down [-], ≥ 1
 */
export function newCanvas(columns: number, rows: number): Canvas {
  const dots = new Uint8Array(columns * rows);
  const marks = new Map<number, string>();
  const widest = columns * ACROSS - 1;
  const highest = rows * DOWN - 1;
  const dot = (x: number, y: number): void => {
    const cell = Math.floor(y / DOWN) * columns + Math.floor(x / ACROSS);
    dots[cell] = (dots[cell] as number) | (BITS[y % DOWN]?.[x % ACROSS] ?? 0);
  };
  const column = (across: number): number => clamped(across * widest, widest);
  const row = (up: number): number => clamped((1 - up) * highest, highest);
  return {
    columns,
    rows,
    line: (from, to) => {
      const steps = Math.max(
        1,
        Math.abs(column(to.across) - column(from.across)),
        Math.abs(row(to.up) - row(from.up)),
      );
      for (let step = 0; step <= steps; step++) {
        const share = step / steps;
        const across = from.across + share * (to.across - from.across);
        dot(column(across), row(from.up + share * (to.up - from.up)));
      }
    },
    mark: ({ across, up }, character) => {
      const cell = Math.floor(row(up) / DOWN) * columns + Math.floor(column(across) / ACROSS);
      marks.set(cell, character);
    },
    upright: (across) => {
      for (let y = 0; y <= highest; y += 2) dot(column(across), y);
    },
    lines: () =>
      Array.from({ length: rows }, (_, at) =>
        Array.from({ length: columns }, (_cell, index) => {
          const cell = at * columns + index;
          const bits = dots[cell] as number;
          return marks.get(cell) ?? (bits === 0 ? ' ' : String.fromCodePoint(BLANK + bits));
        }).join(''),
      ),
  };
}
