import type { PerforatedSheet } from '../../elements/perforated-sheet.ts';
import type { Metres } from '../../quantities/dimensions.ts';

/** A length in millimetres, no digit lost that the reader of a scenario would miss [mm]. */
function exact(length: Metres): string {
  return String(Number((1000 * length).toFixed(4)));
}

/**
 * A length in words.
 *
 * @param length [m]
 */
export function mm(length: Metres): string {
  return `${exact(length)} mm`;
}

/** Sides of a field in words: "170 x 85 mm". */
export function sides({ width, height }: PerforatedSheet['perforated']): string {
  return `${exact(width)} x ${mm(height)}`;
}

/** A hole in words: "round 4 mm", "slot 4 x 32 mm". */
export function holeWords({ shape, hole, 'slot-length': length }: PerforatedSheet): string {
  return length === undefined ? `${shape} ${mm(hole)}` : `${shape} ${exact(hole)} x ${mm(length)}`;
}

/**
 * A sheet as an entry of a scenario's `elements`.
 *
 * @param name of the place
 * @param sheet with its holes
 */
export function scenarioLine(name: string, sheet: PerforatedSheet): string {
  const { perforated, hole, web, sheet: thickness, shape, pattern, facing } = sheet;
  const length = sheet['slot-length'];
  const fields = [
    `perforated: ${sides(perforated)}`,
    `hole: ${mm(hole)}`,
    `web: ${mm(web)}`,
    `sheet: ${mm(thickness)}`,
    ...(shape === 'round' ? [] : [`shape: ${shape}`]),
    ...(length === undefined ? [] : [`slot-length: ${mm(length)}`]),
    ...(pattern === 'staggered' ? [] : [`pattern: ${pattern}`]),
    ...(facing === 'vent' ? [] : [`facing: ${facing}`]),
  ];
  return `${name}: { ${fields.join(', ')} }`;
}
