import { findUnit, inUnit } from '../../quantities/units.ts';
import type { AirNeed, AirNeedTable, RoomAir } from '../../questions/air-need.ts';
import { type Column, numberColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { toCsv } from '../csv.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { figure, fixed, quantity } from '../figures.ts';
import { wrapped } from '../prose.ts';
import { type Drawing, table } from '../table.ts';
import { airPlot } from './air-plot.ts';

/** The air that a heat needs, alone and in its neighbourhood. */
export interface AirAnswer {
  readonly need: AirNeed;
  readonly table: AirNeedTable;
  readonly around: RoomAir;
}

const SECOND_UNIT = 'CFM';

function inCfm(flow: number): string {
  const unit = findUnit('flow', SECOND_UNIT);
  return fixed(unit ? inUnit(unit, flow) : Number.NaN, 1);
}

/** As a user would write a temperature or a length, without digits nobody asked for. */
function plainNumber(value: number): string {
  return String(Number(value.toFixed(1)));
}

function tableColumns({ rises, loads, needs }: AirNeedTable): readonly Column[] {
  return [
    numberColumn('Heat', 'W', KEEP + 9, loads, (load) => figure('power', load)),
    ...rises.map((rise, column) =>
      numberColumn(`${plainNumber(rise)} K`, 'm³/h', KEEP + 1, needs, (row) =>
        figure('flow', row[column]?.flow ?? Number.NaN),
      ),
    ),
  ];
}

/**
 * The air that a heat needs as text: the flow, a table of rise and heat, what to make of it and what to do next.
 *
 * @param answer the need and its table
 * @param drawing width and paint
 * @returns lines that end with a line break
 */
export function airView({ need, table: around, around: place }: AirAnswer, drawing: Drawing): string {
  const { paint, width } = drawing;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const { power, rise, flow } = need;
  const where = `room air of ${quantity('temperature', place.room)} at ${plainNumber(place.altitude)} m`;
  const lines = [
    ...say(
      `${quantity('power', power)} with a rise of ${quantity('kelvins', rise)} need ${quantity('flow', flow)} (${inCfm(flow)} ${SECOND_UNIT}) of ${where}.`,
    ).map(paint.strong),
    '',
    ...table(tableColumns(around), drawing),
    '',
    ...say('Flow by the heat (down) and by what the air may get warmer (across).'),
    '',
    ...airPlot(around, width),
    '',
    ...say(
      'This is what must pass the box, not what is printed on a fan: in a box a fan gives perhaps half of its free flow. The size of the box only sets how fast it gets warm. What a part lies above the air at it hardly falls with more flow.',
    ),
    ...say('Next: describe the box in a file, then see which fans do it: hushwright rank box.yaml'),
  ];
  return `${lines.join('\n')}\n`;
}

function needData({ power, rise, flow, massFlow }: AirNeed): Json {
  return { power_W: power, rise_K: rise, flow_m3_s: flow, massFlow_kg_s: massFlow };
}

/**
 * The air that a heat needs as a document.
 *
 * @param answer the need and its table
 * @param meta version, command and warnings
 */
export function airDocument({ need, table: around, around: place }: AirAnswer, meta: Meta): Document {
  const result = {
    room_K: place.room,
    altitude_m: place.altitude,
    need: needData(need),
    table: around.needs.flat().map(needData),
    next: 'hushwright rank box.yaml',
  };
  return documentOf(result, meta);
}

/**
 * The table of needs as comma-separated values, in SI.
 *
 * @param answer the need and its table
 */
export function airCsv({ table: { needs } }: AirAnswer): string {
  return toCsv(
    ['heat [W]', 'rise [K]', 'flow [m3/s]', 'mass flow [kg/s]'],
    needs.flat().map(({ power, rise, flow, massFlow }) => [power, rise, flow, massFlow]),
  );
}
