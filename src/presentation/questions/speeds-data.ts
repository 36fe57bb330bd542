import { inUnit, usualUnit } from '../../quantities/units.ts';
import type { BankSpeed } from '../../questions/bank-speed.ts';
import type { ControllerLadder } from '../../questions/controller-ladder.ts';
import type { ControlledBank, ControllerTable } from '../../questions/controller-table.ts';
import { bandData } from '../bands/band-data.ts';
import { type CsvCell, toCsv } from '../csv.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { orNull } from './state-data.ts';

function speedData({ ratio, speed }: BankSpeed): Json {
  return { ratio, speed_1_s: speed };
}

function bankData(bank: ControlledBank): Json {
  return {
    place: bank.place,
    fan: bank.fan,
    count: bank.count,
    fullSpeed_1_s: bank.fullSpeed,
    holdFloor: speedData(bank.holdFloor),
    startFloor: speedData(bank.startFloor),
    avoid: bank.avoid.map(({ from, to }) => ({ from_1_s: from, to_1_s: to })),
  };
}

function controllerData(ladder: ControllerLadder): Json {
  if (!ladder.ok) return { sensor: null, rungs: [], settles: [], reason: ladder.reason };
  const { sensor, rungs, duties } = ladder;
  return {
    sensor: { part: sensor.subject, of: sensor.of, limit_K: sensor.limit },
    rungs: rungs.map(({ from, back, drop, speeds, startFirst }) => ({
      from_K: from ?? null,
      back_K: back ?? null,
      drop_K: drop ?? null,
      speeds: speeds.map(speedData),
      startFirst,
    })),
    settles: duties.map(({ duty, rung, level }) => ({ duty, rung, level_dBA: orNull(level) })),
    reason: null,
  };
}

/**
 * What to set a controller to as a document.
 *
 * @param title of the scenario
 * @param found the table
 * @param meta version, command and warnings
 */
export function speedsDocument(
  title: string,
  { banks, duties, ladder }: ControllerTable,
  meta: Meta,
): Document {
  const result = {
    title,
    banks: banks.map(bankData),
    duties: duties.map(({ duty, share, adequate, speeds, bands }) => ({
      duty,
      share,
      adequate,
      speeds: speeds.map(speedData),
      sure: bands && { level_dBA: bandData(bands.level), holding: bands.holding },
    })),
    controller: controllerData(ladder),
  };
  return documentOf(result, meta);
}

/** Heads of two columns a bank. */
function speedHeads(banks: readonly ControlledBank[]): readonly string[] {
  return banks.flatMap(({ place }) => [`${place} [1]`, `${place} [1/s]`]);
}

function speedCells(speeds: readonly BankSpeed[]): readonly CsvCell[] {
  return speeds.flatMap(({ ratio, speed }) => [ratio, speed]);
}

/**
 * The table of a controller as comma-separated values: temperatures in K and, for controllers that are set so, in °C.
 *
 * @param found the table
 */
export function controllerCsv({ banks, ladder }: ControllerTable): string {
  const celsius = (value: number | undefined): number | null =>
    value === undefined ? null : inUnit(usualUnit('temperature'), value);
  return toCsv(
    ['above [K]', 'back below [K]', 'above [degC]', 'back below [degC]', ...speedHeads(banks), 'start first'],
    ladder.ok
      ? ladder.rungs.map(({ from, back, speeds, startFirst }) => [
          from ?? null,
          back ?? null,
          celsius(from),
          celsius(back),
          ...speedCells(speeds),
          startFirst.join(' '),
        ])
      : [],
  );
}

/**
 * The fixed speeds of the duties as comma-separated values, in SI.
 *
 * @param found the table
 */
export function dutySpeedsCsv({ banks, duties }: ControllerTable): string {
  return toCsv(
    [
      'duty',
      'share [1]',
      'adequate',
      ...speedHeads(banks),
      'level from [dB(A)]',
      'level [dB(A)]',
      'level to [dB(A)]',
      'limits hold [1]',
    ],
    duties.map(({ duty, share, adequate, speeds, bands }) => [
      duty,
      share,
      adequate,
      ...speedCells(speeds),
      orNull(bands?.level.low),
      orNull(bands?.level.expected),
      orNull(bands?.level.high),
      orNull(bands?.holding),
    ]),
  );
}
