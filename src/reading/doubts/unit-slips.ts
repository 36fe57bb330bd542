import type { KindName, Unit } from '../../quantities/unit-table.ts';
import { findUnit } from '../../quantities/units.ts';

/** Numbers as written, and the unit behind the last one; a unit may begin with a digit. */
const NUMBERS_AND_RATE = /^(.*\d)\s+(1\/\w+)$/;
const NUMBERS_AND_UNIT = /^([\s\d.,;+\-−eE]*[\d.])\s*(\D.*)$/;

/** Units that are taken for each other, the likelier ones first. */
const TAKEN_FOR: Readonly<Partial<Record<KindName, readonly string[]>>> = {
  pressure: ['mmH2O', 'Pa', 'inH2O', 'mbar'],
  flow: ['CFM', 'm³/h', 'l/s', 'm³/min', 'l/min'],
  speed: ['rpm', '1/s'],
};

/** A figure with another unit behind it. */
export interface Slip {
  /** The corrected figure, ready to be written. */
  readonly written: string;
  /** What the value has to be multiplied by [-]. */
  readonly factor: number;
  /** The unit it was written in, and the one it is probably in. */
  readonly from: string;
  readonly to: string;
}

function factorOf(unit: Unit): number {
  return (unit.times ?? 1) / (unit.over ?? 1);
}

/**
 * Ways in which a figure may have got the wrong unit, the likelier ones first.
 *
 * @param kind of quantity
 * @param written one number or several, and a unit
 */
export function slipsOf(kind: KindName, written: unknown): readonly Slip[] {
  const text = String(written).trim();
  const [, numbers, spelling] = NUMBERS_AND_RATE.exec(text) ?? NUMBERS_AND_UNIT.exec(text) ?? [];
  const from = spelling === undefined ? undefined : findUnit(kind, spelling);
  if (!from) return [];
  return (TAKEN_FOR[kind] ?? []).flatMap((name) => {
    const to = findUnit(kind, name);
    if (!to || to === from) return [];
    const factor = factorOf(to) / factorOf(from);
    return [{ written: `${numbers} ${to.name}`, factor, from: from.name, to: to.name }];
  });
}
