import type { Enclosure } from '../enclosure/enclosure.ts';
import { nearestName } from '../quantities/nearest.ts';
import { readQuantity } from '../quantities/units.ts';
import { keysOf, valueAt } from '../reading/form-tree.ts';
import type { Path } from '../reading/problem.ts';
import { scenarioForm } from '../reading/scenario-form.ts';
import { findPath } from '../reading/variants/dotted-path.ts';
import type { Setting } from '../reading/variants/settings.ts';

/** What a value of a quantity changes. */
export type Change =
  | { readonly kind: 'settings'; readonly settings: readonly Setting[] }
  /** Factor on the heat of all parts in all duties [-]. */
  | { readonly kind: 'heat'; readonly factor: number }
  /** Room temperature in all duties [K]. */
  | { readonly kind: 'room'; readonly room: number }
  /** Speed of one place, or of all: a share of full speed [-] or revolutions [1/s]. */
  | {
      readonly kind: 'speed';
      readonly place: string | undefined;
      readonly of: 'full' | 'rotation';
      readonly speed: number;
    };

/** A value that does not fit. */
export interface NoChange {
  readonly kind: 'misfit';
  readonly reason: string;
}

/** A quantity of a scenario that may be varied. */
export interface Quantity {
  /** As the user calls it. */
  readonly name: string;
  /** Whether its temperatures are differences. */
  readonly difference: boolean;
  /** Whether it sets the speed of fans. */
  readonly speeds: boolean;
  /** Fields of choices it puts in the place of: their values no longer tell options apart. */
  readonly frees: readonly { readonly place: string; readonly field: string }[];
  readonly changeTo: (text: string) => Change | NoChange;
}

/** What a quantity is looked for in. */
export interface QuantityContext {
  /** The scenario file as written. */
  readonly written: unknown;
  readonly enclosure: Enclosure;
}

/** Words of our own for what a scenario file has no single place for. */
const WORDS = ['speed', 'heat', 'room'] as const;

function misfitOf(expected: string, found: string): NoChange {
  return { kind: 'misfit', reason: `found ${found}, expected ${expected}` };
}

function speedQuantity(name: string, place: string | undefined): Quantity {
  return {
    name,
    difference: false,
    speeds: true,
    frees: [],
    changeTo: (text) => {
      const share = readQuantity('percent', text);
      if (share.ok && share.value > 0 && share.value <= 1)
        return { kind: 'speed', place, of: 'full', speed: share.value };
      const turning = readQuantity('speed', text);
      if (turning.ok && turning.value > 0)
        return { kind: 'speed', place, of: 'rotation', speed: turning.value };
      return misfitOf('a speed such as 60 %, above 0 and up to 100 %, or 1200 rpm', text);
    },
  };
}

const heatQuantity: Quantity = {
  name: 'heat',
  difference: false,
  speeds: false,
  frees: [],
  changeTo: (text) => {
    const factor = readQuantity('percent', text);
    return factor.ok && factor.value >= 0
      ? { kind: 'heat', factor: factor.value }
      : misfitOf('a percentage such as 120 %, 0 or more', text);
  },
};

const roomQuantity: Quantity = {
  name: 'room',
  difference: false,
  speeds: false,
  frees: [],
  changeTo: (text) => {
    const room = readQuantity('temperature', text);
    // As for the room of a scenario.
    return room.ok && room.value >= 233.15 && room.value <= 343.15
      ? { kind: 'room', room: room.value }
      : misfitOf('a temperature from -40 °C to 70 °C', text);
  },
};

/** A number in a file may stand without a unit; then it is written as one. */
function asWritten(text: string): unknown {
  return /^-?\d+(?:\.\d+)?$/.test(text) ? Number(text) : text;
}

function settingsFor(path: Path, value: unknown, frees: Quantity['frees']): readonly Setting[] {
  const chosen = frees.map(
    ({ place, field }): Setting => ({ path: ['choices', place, field], value: [value] }),
  );
  // Builds and readings name options by their values, which may be others now.
  return [
    { path: ['builds'], value: undefined },
    { path: ['readings'], value: undefined },
    { path, value },
    ...chosen,
  ];
}

/** Whether what stands under `elements` has no say because whole elements are chosen. */
function isOverruled(written: unknown, path: Path): boolean {
  const [section, place = ''] = path;
  return section === 'elements' && valueAt(written, ['choices', place, 'element']) !== undefined;
}

function fileQuantity(name: string, { written }: QuantityContext): Quantity | string {
  const found = findPath(written, name, keysOf(scenarioForm));
  if (!found.ok) return found.message;
  const { path } = found;
  if (isOverruled(written, path)) {
    const [, place = ''] = path;
    return `what stands under elements.${place} has no say, since whole elements are chosen there; vary one of choices.${place}.element by its name`;
  }
  const [section, place = '', field = ''] = path;
  const listed = section === 'elements' && path.length === 3 && valueAt(written, ['choices', place, field]);
  const frees =
    listed === false || listed === undefined ? [] : [{ place: String(place), field: String(field) }];
  return {
    name,
    difference: section === 'margin',
    speeds: false,
    frees,
    changeTo: (text) => ({ kind: 'settings', settings: settingsFor(path, asWritten(text), frees) }),
  };
}

/**
 * Finds the quantity that a name stands for: `speed` of all banks, `speed.push` of one, `heat` of all parts, `room` in
 * all duties, or the path of a value in the scenario file.
 *
 * @param name as the user calls it
 * @param context the scenario
 * @returns the quantity, or why there is none
 */
export function findQuantity(name: string, context: QuantityContext): Quantity | string {
  const [word, ...rest] = name.trim().split('.');
  const place = rest.join('.');
  if (word === 'speed') {
    const banks = context.enclosure.places.flatMap(({ kind, id }) => (kind === 'bank' ? [id] : []));
    if (place === '' || banks.includes(place)) return speedQuantity(name.trim(), place || undefined);
    const near = nearestName(place, banks);
    const hint = near ? `did you mean "${near}"?` : `there are: ${banks.join(', ')}`;
    return `there is no place for fans "${place}"; ${hint}`;
  }
  if (place === '' && word === 'heat') return heatQuantity;
  if (place === '' && word === 'room') return roomQuantity;
  const found = fileQuantity(name.trim(), context);
  if (typeof found !== 'string') return found;
  const near = place === '' ? nearestName(word ?? '', WORDS) : undefined;
  return near ? `${found}, or "${near}"` : found;
}
