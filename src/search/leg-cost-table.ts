import type { Build, Enclosure, Leg } from '../enclosure/enclosure.ts';
import type { Pascals } from '../quantities/dimensions.ts';
import { closeToAny, countedShare, type NextPlace } from './bank-closeness.ts';
import type { LegDemand } from './demand.ts';
import { CELLS } from './demand-table.ts';
import { type DualsAt, dualTables, type SharedTables } from './dual-tables.ts';
import { type BankBook, bankPlaces, type LegBanks, legBanks } from './leg-banks.ts';
import { aloneCost, type LegBank, type Needs, needsOf, togetherCost } from './leg-cost.ts';
import { groupAt, type OptionTree } from './option-tree.ts';

/** Energy of one leg's banks at a node for the options a build has there, open places at their best [-]. */
export type LegCost = (build: Build, node: number) => number;

/** What a leg is asked for at a node: its demand and the pressure to push against beside its losses. */
export type LegTask = (node: number) => { readonly demand: LegDemand | null; readonly against: Pascals };

/** What stands in the bank places of a leg in a build. */
interface Standing {
  /** The only bank, if there is one and no place is open. */
  readonly alone: LegBank | null;
  readonly duals: readonly DualsAt[];
  /** Costs worked out so far, by node. */
  readonly values: Map<number, number>;
}

/** All that legs of many sets of elements have in common. */
export interface LegLibrary {
  readonly book: BankBook;
  readonly tables: SharedTables;
}

/** What stands in the bank places of a leg in a build. */
function standingIn(
  build: Build,
  places: readonly number[],
  banks: LegBanks,
  tables: ReturnType<typeof dualTables>,
  trees: readonly OptionTree[],
): Standing {
  const duals: DualsAt[] = [];
  let alone: LegBank | null = null;
  // A bank is derated only if another is sure to run before it.
  let behind = false;
  let open = false;
  const known = places.map((place, at): NextPlace => {
    const code = build[place] as number;
    if (code >= 0) return banks[at]?.[code] ? 'taken' : 'none';
    return groupAt(trees[place] as OptionTree, code).mayBeEmpty ? 'open' : 'taken';
  });
  places.forEach((place, at) => {
    const code = build[place] as number;
    const own = known[at] ?? 'none';
    if (own === 'none') return;
    const sides = {
      before: countedShare(own, known[at - 1] ?? 'none'),
      behind: countedShare(own, known[at + 1] ?? 'none'),
    };
    const bank = code < 0 ? null : (banks[at]?.[code] ?? null);
    if (bank) duals.push(tables.ofBank(at, code, { derating: behind ? bank.derating : 1, sides }));
    else duals.push(tables.ofGroup(at, code, { behind, sides }));
    alone = bank;
    open ||= bank === null;
    behind ||= own === 'taken';
  });
  return { alone: open || duals.length !== 1 ? null : alone, duals, values: new Map() };
}

/**
 * Least energy of a leg's banks at each node, for any combination of options of its places, open ones included.
 * Everything worked out is remembered.
 *
 * @param enclosure the scenario
 * @param elements build of which only the elements matter
 * @param leg index of the leg
 * @param task what the leg is asked for at a node
 * @param library what is worked out for all sets of elements
 */
export function legCostTable(
  enclosure: Enclosure,
  elements: Build,
  leg: number,
  task: LegTask,
  { book, tables: shared }: LegLibrary,
): LegCost {
  const places = bankPlaces(enclosure, enclosure.legs[leg] as Leg);
  const banks = legBanks(enclosure, elements, leg, book);
  const tables = dualTables(places, banks, shared);
  const close = closeToAny(banks.flat().flatMap((bank) => (bank ? [bank.closeness] : [])));
  const needs = new Array<Needs | undefined>(CELLS + 1);
  const standings = new Map<number | string, Standing>();
  const groups = places.map((place) => (shared.trees[place] as OptionTree).length);
  const codes = places.map((_, at) => (banks[at]?.length ?? 0) + (groups[at] as number));
  const fits = codes.reduce((product, count) => product * count, 1) <= Number.MAX_SAFE_INTEGER;

  /** Tells what stands in the places of the leg from all else that may stand there. */
  const keyOf = (build: Build): number | string => {
    if (!fits) return places.map((place) => build[place]).join(' ');
    let key = 0;
    for (let at = 0; at < places.length; at++) {
      key = key * (codes[at] as number) + (build[places[at] as number] as number) + (groups[at] as number);
    }
    return key;
  };

  const costAt = ({ alone, duals }: Standing, node: number): number => {
    const { demand, against } = task(node);
    if (!demand) return Number.POSITIVE_INFINITY;
    const needed = needs[node] ?? needsOf(demand, against, close);
    needs[node] = needed;
    if (duals.length === 0) return (needed.rises[0] as number) <= 0 ? demand.vents : Number.POSITIVE_INFINITY;
    if (alone) return demand.vents + aloneCost(alone, demand, needed);
    return (
      demand.vents +
      togetherCost(
        duals.map((dual) => dual(node, demand, needed)),
        needed,
      )
    );
  };

  return (build, node) => {
    const key = keyOf(build);
    let standing = standings.get(key);
    if (!standing) {
      standing = standingIn(build, places, banks, tables, shared.trees);
      standings.set(key, standing);
    }
    let value = standing.values.get(node);
    if (value === undefined) {
      value = costAt(standing, node);
      standing.values.set(node, value);
    }
    return value;
  };
}
