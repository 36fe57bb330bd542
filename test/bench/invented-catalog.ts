import { seeded } from '../search/random.ts';
import { fanText } from './invented-fan.ts';
import { type Frame, inventLine } from './invented-line.ts';

/** Frames of a size that the banks of the benchmark take, and how often each comes in twenty lines. */
const fitting: readonly (readonly [depth: number, times: number])[] = [
  [10, 2],
  [15, 6],
  [20, 4],
  [25, 8],
];
/** Frames that fit nowhere, as every real list has them. */
const strangers: readonly Frame[] = [
  { size: 60, depth: 15 },
  { size: 60, depth: 25 },
  { size: 120, depth: 25 },
  { size: 92, depth: 38 },
  { size: 80, depth: 38 },
];

/** How many fans of which size a catalog holds. */
export interface CatalogPlan {
  readonly seed: number;
  /** Fans that fit, by size of frame [mm]. */
  readonly sizes: Readonly<Record<number, number>>;
  /** Fans that fit nowhere. */
  readonly strangers: number;
}

/** A file of a catalog. */
export interface CatalogFile {
  readonly name: string;
  readonly text: string;
}

interface Entry {
  readonly frame: Frame;
  readonly text: string;
}

/** As many fans as wanted, line by line, of frames drawn from a list. */
function fansOf(seed: number, frames: readonly Frame[], count: number, letter: string): readonly Entry[] {
  const random = seeded(seed);
  const entries: Entry[] = [];
  for (let number = 1; entries.length < count; number++) {
    const line = inventLine(random, random.pick(frames));
    const { size, depth } = line.frame;
    const name = `${letter}${number}-${size}-${depth}`;
    line.tipSpeeds.forEach((_, member) => {
      const text = fanText(random, line, member, `${name}-${'abcdefgh'[member]}`);
      entries.push({ frame: line.frame, text });
    });
  }
  return entries.slice(0, count);
}

function fileOf(frame: Frame, entries: readonly Entry[]): CatalogFile {
  const head = [
    "# Every figure in this file is invented by a program: no maker's data.",
    `family: ${frame.size} x ${frame.depth}`,
    'provenance: invented',
    'note: made up for measuring how fast the search is',
    'fans:',
  ];
  const text = `${[...head, ...entries.map((entry) => entry.text)].join('\n')}\n`;
  return { name: `frame-${frame.size}-${frame.depth}.yaml`, text };
}

/**
 * Invents a catalog, one file a frame. A larger catalog of the same seed holds all fans of a smaller one.
 *
 * @param plan how many fans of which size [mm]
 */
export function inventCatalog(plan: CatalogPlan): readonly CatalogFile[] {
  const bySize = Object.entries(plan.sizes).flatMap(([written, count]) => {
    const size = Number(written);
    const frames = fitting.flatMap(([depth, times]) =>
      Array.from({ length: times }, () => ({ size, depth })),
    );
    return fansOf(plan.seed + size, frames, count, 'v');
  });
  const entries = [...bySize, ...fansOf(plan.seed, strangers, plan.strangers, 'w')];
  const keys = [...new Set(entries.map(({ frame }) => `${frame.size} ${frame.depth}`))].sort();
  return keys.map((key) => {
    const own = entries.filter(({ frame }) => `${frame.size} ${frame.depth}` === key);
    const [first] = own;
    if (!first) throw new RangeError('a frame without fans');
    return fileOf(first.frame, own);
  });
}
