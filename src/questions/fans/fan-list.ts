import type { FanModel } from '../../fan/fan-model.ts';
import type { Decibels, Metres } from '../../quantities/dimensions.ts';
import { fanLevel, levelAtRatio, speedModel } from '../../sound/fan-noise.ts';
import type { SoundAssumptions } from '../../sound/sound-assumptions.ts';
import { type KnownPath, type PathPoint, pathPoint } from './path-point.ts';

/** What a list of fans can go by. */
export const FAN_ORDERS = [
  'fan',
  'size',
  'depth',
  'speed',
  'flow',
  'pressure',
  'level',
  'power',
  'price',
] as const;
export type FanOrder = (typeof FAN_ORDERS)[number];

/** Which fans are wanted, and in which order. */
export interface FanWish {
  /** Sizes of frames [m]; any if there are none. */
  readonly sizes: readonly Metres[];
  /** Greatest depth [m]. */
  readonly depth?: Metres | undefined;
  /** Greatest level [dB(A)]: at the asked flow if there is a path, else at full speed. */
  readonly level?: Decibels | undefined;
  /** Greatest price; a fan without one is left out. */
  readonly price?: number | undefined;
  readonly path?: KnownPath | undefined;
  readonly by: FanOrder;
}

/** A fan of the list. */
export interface ListedFan {
  readonly fan: FanModel;
  /** At full speed and free delivery, 1 m, free field [dB(A)]. */
  readonly fullLevel: Decibels;
  /** What it has to do on the path; absent if there is none. */
  readonly point?: PathPoint;
}

/** Frames are taken for equal within this [m]: makers round them differently. */
const FRAME_TOLERANCE: Metres = 0.001;
/** Slack for rounding [m]. */
const ROUNDING: Metres = 1e-9;

function listed(fan: FanModel, { path }: FanWish, sound: SoundAssumptions): ListedFan {
  const model = speedModel(fan.ratings, fan.fullSpeed, sound);
  const fullLevel = fanLevel(levelAtRatio(model, 1), sound.fanFloor);
  return { fan, fullLevel, ...(path ? { point: pathPoint(fan, path, sound) } : {}) };
}

function levelOf({ fullLevel, point }: ListedFan): Decibels {
  return point ? point.level : fullLevel;
}

function fits({ fan }: ListedFan, { sizes, depth }: FanWish): boolean {
  const sized =
    sizes.length === 0 || sizes.some((size) => Math.abs(fan.size - size) <= FRAME_TOLERANCE + ROUNDING);
  return sized && (depth === undefined || fan.depth <= depth + ROUNDING);
}

function isWanted(row: ListedFan, { level, price }: FanWish): boolean {
  if (row.point?.reach === 'too weak') return false;
  if (level !== undefined && levelOf(row) > level) return false;
  return price === undefined || (row.fan.price !== undefined && row.fan.price <= price);
}

/** What a row is ordered by; what is wanted large comes first, and what is unknown last. */
function keyOf(row: ListedFan, by: FanOrder): number {
  const { fan } = row;
  switch (by) {
    case 'fan':
      return 0;
    case 'size':
      return fan.size;
    case 'depth':
      return fan.depth;
    case 'speed':
      return fan.fullSpeed;
    case 'flow':
      return -fan.curve.freeDelivery;
    case 'pressure':
      return -fan.curve.shutOff;
    case 'level':
      return levelOf(row);
    case 'power':
      return fan.power;
    case 'price':
      return fan.price ?? Number.POSITIVE_INFINITY;
  }
}

/** Difference of two keys; two unknown ones do not differ. */
function compared(one: number, other: number): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}

/**
 * Fans of a catalog that fit a wish, in the wished order; equals go by level, then by id. Fans that are too weak for
 * the path are left out.
 *
 * @param fans of the catalog
 * @param wish which, and in which order
 * @param sound how levels follow from ratings
 */
export function fanList(
  fans: readonly FanModel[],
  wish: FanWish,
  sound: SoundAssumptions,
): { readonly rows: readonly ListedFan[]; readonly tooWeak: number } {
  const fitting = fans.map((fan) => listed(fan, wish, sound)).filter((row) => fits(row, wish));
  const rows = fitting
    .filter((row) => isWanted(row, wish))
    .sort((one, other) => {
      const byKey = compared(keyOf(one, wish.by), keyOf(other, wish.by));
      const byLevel = wish.by === 'fan' ? 0 : compared(levelOf(one), levelOf(other));
      return byKey || byLevel || (one.fan.id < other.fan.id ? -1 : 1);
    });
  return { rows, tooWeak: fitting.filter(({ point }) => point?.reach === 'too weak').length };
}
