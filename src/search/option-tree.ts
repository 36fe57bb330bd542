import type { Bank, Enclosure, Place } from '../enclosure/enclosure.ts';
import { speedModel } from '../sound/fan-noise.ts';
import type { SoundAssumptions } from '../sound/sound-assumptions.ts';
import { ratioAtLevel } from '../sound/speed-at-level.ts';

/** Options of a place that are looked at together. */
export interface OptionGroup {
  /** Every option of the group. */
  readonly options: readonly number[];
  /** What it falls into: codes of options (≥ 0) and of smaller groups (< 0). */
  readonly parts: readonly number[];
  /** Whether the place may stay empty. */
  readonly mayBeEmpty: boolean;
  /** Whether all of them are rows of as many fans of one size: what stands close costs them the same. */
  readonly oneRow: boolean;
}

/**
 * The options of a place in groups of the like. In a partial build a place holds a code: that of an option, or
 * −1 − g for group g, of which group 0 holds all options.
 */
export type OptionTree = readonly OptionGroup[];

/** Trees of all places of an enclosure. */
export type OptionForest = readonly OptionTree[];

/** Parts of a group, and most options that are not grouped any further [-]. */
const PARTS = 8;
/** Halvings that make so many parts. */
const HALVINGS = 3;
/** Level at which fans are likened to each other [dB at 1 m]. */
const LIKENED_AT = 22;

/** What makes banks alike: the logarithms of the flow and the pressure they give at equal noise. */
interface Likeness {
  readonly option: number;
  /** Name and count: breaks ties the same way in whatever order a catalog stands. */
  readonly name: string;
  /** Frame and count. */
  readonly row: string;
  readonly flow: number;
  readonly pressure: number;
}

function likenessOf(option: number, { fan, count }: Bank, sound: SoundAssumptions): Likeness {
  const model = speedModel(fan.ratings, fan.fullSpeed, sound);
  const wanted = ratioAtLevel(model, LIKENED_AT - 10 * Math.log10(count));
  const ratio = Math.min(1, Math.max(fan.holdFloor, wanted));
  return {
    option,
    name: `${fan.id} x${count}`,
    row: `${fan.size} x${count}`,
    flow: Math.log(count * ratio * fan.curve.freeDelivery),
    pressure: Math.log(ratio * ratio * fan.curve.shutOff),
  };
}

function spreadOf(items: readonly Likeness[], by: 'flow' | 'pressure'): number {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const item of items) {
    least = Math.min(least, item[by]);
    most = Math.max(most, item[by]);
  }
  return most - least;
}

/** By code units: no locale has a say. */
function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/** Two halves of about equal size, cut across the wider spread. */
function halves(items: readonly Likeness[]): readonly (readonly Likeness[])[] {
  if (items.length < 2) return [items];
  const by = spreadOf(items, 'flow') >= spreadOf(items, 'pressure') ? 'flow' : 'pressure';
  const sorted = items.toSorted((a, b) => a[by] - b[by] || compareText(a.name, b.name));
  const middle = sorted.length >> 1;
  return [sorted.slice(0, middle), sorted.slice(middle)];
}

/** Those of one row each, in order of appearance; one list if there is no more than that. */
function byRow(items: readonly Likeness[]): readonly (readonly Likeness[])[] {
  const rows = new Map<string, Likeness[]>();
  for (const item of items) rows.set(item.row, [...(rows.get(item.row) ?? []), item]);
  return [...rows.values()];
}

function partsOf(items: readonly Likeness[]): readonly (readonly Likeness[])[] {
  const rows = byRow(items);
  if (rows.length > 1) return rows;
  if (items.length <= PARTS) return items.map((item) => [item]);
  let parts: readonly (readonly Likeness[])[] = [items];
  for (let count = 0; count < HALVINGS; count++) parts = parts.flatMap(halves);
  return parts;
}

function treeOf(place: Place, sound: SoundAssumptions): OptionTree {
  if (place.kind === 'element') {
    const options = place.options.map((_, option) => option);
    return [{ options, parts: options, mayBeEmpty: false, oneRow: false }];
  }
  const groups: OptionGroup[] = [];
  const add = (items: readonly Likeness[], empty: readonly number[]): number => {
    const index = groups.length;
    const group: OptionGroup = {
      options: [...empty, ...items.map(({ option }) => option)],
      parts: [],
      mayBeEmpty: empty.length > 0,
      oneRow: empty.length === 0 && byRow(items).length === 1,
    };
    groups.push(group);
    const parts = partsOf(items).map((part) =>
      part.length === 1 ? (part[0] as Likeness).option : add(part, []),
    );
    groups[index] = { ...group, parts: [...empty, ...parts] };
    return -1 - index;
  };
  const empty = place.options.flatMap((bank, option) => (bank ? [] : [option]));
  const banks = place.options.flatMap((bank, option) => (bank ? [likenessOf(option, bank, sound)] : []));
  add(
    banks.toSorted((a, b) => compareText(a.name, b.name)),
    empty,
  );
  return groups;
}

/**
 * Groups the options of every place by what they do: fans that give like flows and pressures at equal noise stand
 * together, so that a bound of the group says something about each of them.
 *
 * @param enclosure the scenario
 */
export function optionForest({ places, assumptions }: Enclosure): OptionForest {
  return places.map((place) => treeOf(place, assumptions.sound));
}

/**
 * The group a code stands for.
 *
 * @param tree of the place
 * @param code below 0
 */
export function groupAt(tree: OptionTree, code: number): OptionGroup {
  const group = tree[-1 - code];
  if (!group) throw new RangeError(`no group ${code} among ${tree.length}`);
  return group;
}
