import type { ListedFan } from '../../questions/fans/fan-list.ts';
import type { KnownPath } from '../../questions/fans/path-point.ts';
import { type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { count, figure, fixed, levelText, prices, quantity } from '../figures.ts';
import type { Paint } from '../paint.ts';
import { wrapped } from '../prose.ts';
import { table } from '../table.ts';

/** A list of fans and what it was made for. */
export interface FanListing {
  readonly rows: readonly ListedFan[];
  /** Fans that fit but cannot move the asked flow. */
  readonly tooWeak: number;
  readonly path?: KnownPath | undefined;
}

const MILLIMETRES = 1000;

function columnsOf(rows: readonly ListedFan[], hasPath: boolean): readonly Column[] {
  const shownPrices = prices(rows.map(({ fan }) => fan.price));
  const mark = ({ fan }: ListedFan): string => (fan.curve.synthesised ? `${fan.id}*` : fan.id);
  const onPath = hasPath
    ? [
        numberColumn('Level', 'dB(A)', KEEP + 4, rows, ({ point }) => (point ? levelText(point.level) : '')),
        numberColumn('Speed', '%', KEEP + 3, rows, ({ point, fan }) =>
          point ? figure('percent', Math.max(point.ratio, fan.holdFloor)) : '',
        ),
        numberColumn('', 'rpm', KEEP + 2, rows, ({ point, fan }) =>
          point ? figure('rpm', fan.fullSpeed * Math.max(point.ratio, fan.holdFloor)) : '',
        ),
        numberColumn('k', '', 60, rows, ({ point }) => (point ? fixed(point.resistance, 2) : '')),
        numberColumn('Of free', '%', 55, rows, ({ point }) =>
          point ? figure('percent', point.flowShare) : '',
        ),
      ]
    : [];
  return [
    textColumn('Fan', KEEP + 5, rows, mark),
    numberColumn('Size', 'mm', KEEP + 1, rows, ({ fan }) => fixed(fan.size * MILLIMETRES, 0)),
    numberColumn('Depth', 'mm', KEEP + 1, rows, ({ fan }) => fixed(fan.depth * MILLIMETRES, 0)),
    ...onPath,
    numberColumn('Full speed', 'rpm', 50, rows, ({ fan }) => figure('rpm', fan.fullSpeed)),
    numberColumn('Flow', 'm³/h', 45, rows, ({ fan }) => figure('flow', fan.curve.freeDelivery)),
    numberColumn('Pressure', 'Pa', 45, rows, ({ fan }) => figure('pressure', fan.curve.shutOff)),
    numberColumn('Full level', 'dB(A)', 48, rows, ({ fullLevel }) => levelText(fullLevel)),
    numberColumn('Power', 'W', 30, rows, ({ fan }) => figure('power', fan.power)),
    numberColumn('Price', '', 40, shownPrices, (price) => price),
  ];
}

function sentences({ rows, tooWeak, path }: FanListing): readonly string[] {
  const weak = `${count(tooWeak)} more ${tooWeak === 1 ? 'is' : 'are'} too weak for it.`;
  const asked = path
    ? [
        `Level and speed: one fan moving ${quantity('flow', path.flow)} through a path that loses ` +
          `${quantity('pressure', path.pressure)} there, at 1 m. k: resistance of the path against the fan.` +
          (tooWeak > 0 ? ` ${weak}` : ''),
      ]
    : [];
  const held = rows.some(({ point }) => point?.reach === 'below hold');
  return [
    `${count(rows.length)} ${rows.length === 1 ? 'fan' : 'fans'}.`,
    ...asked,
    ...(held
      ? ['A fan that would have to turn slower than it can is shown at the least speed it holds.']
      : []),
    ...(rows.some(({ fan }) => fan.curve.synthesised) ? ['* pressure curve made up from box figures.'] : []),
  ];
}

/**
 * A list of fans as text.
 *
 * @param listing rows and what they were made for
 * @param drawing width of the terminal, if there is one, and paint
 */
export function fanListView(
  listing: FanListing,
  drawing: { readonly width?: number | undefined; readonly paint: Paint },
): string {
  const lines =
    listing.rows.length > 0
      ? [...table(columnsOf(listing.rows, listing.path !== undefined), drawing), '']
      : [];
  return `${[...lines, ...sentences(listing).flatMap((sentence) => wrapped(sentence, drawing.width))].join('\n')}\n`;
}

function rowData({ fan, fullLevel, point }: ListedFan): Json {
  return {
    fan: fan.id,
    size_m: fan.size,
    depth_m: fan.depth,
    fullSpeed_1_s: fan.fullSpeed,
    freeDelivery_m3_s: fan.curve.freeDelivery,
    shutOff_Pa: fan.curve.shutOff,
    synthesisedCurve: fan.curve.synthesised,
    fullLevel_dBA: fullLevel,
    power_W: fan.power,
    price: fan.price ?? null,
    provenance: fan.provenance,
    path: point
      ? {
          resistance: point.resistance,
          ratio: point.ratio,
          flowShare: point.flowShare,
          level_dBA: point.level,
          reach: point.reach,
        }
      : null,
  };
}

/**
 * The same as a document.
 *
 * @param listing rows and what they were made for
 * @param meta version, command and warnings
 */
export function fanListDocument({ rows, tooWeak, path }: FanListing, meta: Meta): Document {
  const asked = path ? { flow_m3_s: path.flow, pressure_Pa: path.pressure } : null;
  return documentOf({ fans: rows.map(rowData), path: asked, tooWeak }, meta);
}
