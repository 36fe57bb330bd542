import type { KindName } from './unit-table.ts';
import { inUnit, usualUnit } from './units.ts';

/**
 * A quantity for a sentence, in the usual unit of its kind, such as "0.27 K/W".
 *
 * @param kind of quantity
 * @param value in SI [unit of the kind]; if it is not finite, the text is "none"
 * @param digits that count [-], ≥ 1
 */
export function roundedQuantity(kind: KindName, value: number, digits: number): string {
  const unit = usualUnit(kind);
  const number = inUnit(unit, value);
  return Number.isFinite(number) ? `${Number(number.toPrecision(digits))} ${unit.name}` : 'none';
}
