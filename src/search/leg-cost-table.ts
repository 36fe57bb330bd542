import type { Build, Enclosure, Leg } from '../enclosure/enclosure.ts';
import type { Pascals } from '../quantities/dimensions.ts';
import { closeToAny, countedShare, type NextPlace } from './bank-closeness.ts';
import type { LegDemand } from './demand.ts';
import { CELLS } from './demand-table.ts';
import { type DualsAt, dualTables } from './dual-tables.ts';
import { type BankBook, bankPlaces, legBanks } from './leg-banks.ts';
import { aloneCost, type LegBank, type Needs, needsOf, togetherCost } from './leg-cost.ts';
import { OPEN } from './space.ts';

/** Energy of one leg's banks at a node for the options a build has there, open places at their best [-]. */
export type LegCost = (build: Build, node: number) => number;

/** What a leg is asked for at a node: its demand and the pressure to push against beside its losses. */
export type LegTask = (node: number) => { readonly demand: LegDemand | null; readonly against: Pascals };

/** What stands in the bank places of a leg in a build. */
interface Standing {
  /** The only bank, if there is one and no place is open. */
  readonly alone: LegBank | null;
  readonly duals: readonly DualsAt[];
}

interface Entry {
  readonly standing: Standing;
  readonly values: Float64Array;
}

function knownOf(option: number, banks: readonly (LegBank | null)[]): NextPlace {
  if (option === OPEN) return 'open';
  return banks[option] ? 'taken' : 'none';
}

/** What stands in the bank places of a leg in a build. */
function standingIn(
  build: Build,
  places: readonly number[],
  banks: readonly (readonly (LegBank | null)[])[],
  tables: ReturnType<typeof dualTables>,
): Standing {
  const duals: DualsAt[] = [];
  let alone: LegBank | null = null;
  // A bank is derated only if another is sure to run before it.
  let behind = false;
  let open = false;
  const known = places.map((place, at) => knownOf(build[place] as number, banks[at] ?? []));
  places.forEach((place, at) => {
    const option = build[place] as number;
    const bank = option === OPEN ? null : (banks[at]?.[option] ?? null);
    const own = known[at] ?? 'none';
    const sides = {
      before: countedShare(own, known[at - 1] ?? 'none'),
      behind: countedShare(own, known[at + 1] ?? 'none'),
    };
    if (option === OPEN) {
      duals.push(tables.ofOpen(at, behind, sides));
      open = true;
    } else if (bank) {
      duals.push(tables.ofBank(at, option, bank, { derating: behind ? bank.derating : 1, sides }));
      alone = bank;
    }
    behind ||= bank !== null;
  });
  return { alone: open || duals.length !== 1 ? null : alone, duals };
}

/**
 * Least energy of a leg's banks at each node, for any combination of options of its places, open ones included.
 * Everything worked out is remembered.
 *
 * @param enclosure the scenario
 * @param elements build of which only the elements matter
 * @param leg index of the leg
 * @param task what the leg is asked for at a node
 * @param book banks compiled so far
 */
export function legCostTable(
  enclosure: Enclosure,
  elements: Build,
  leg: number,
  task: LegTask,
  book: BankBook,
): LegCost {
  const places = bankPlaces(enclosure, enclosure.legs[leg] as Leg);
  const banks = legBanks(enclosure, elements, leg, book);
  const tables = dualTables(banks);
  const close = closeToAny(banks.flat().flatMap((bank) => (bank ? [bank.closeness] : [])));
  const needs = new Array<Needs | undefined>(CELLS + 1);
  const entries = new Map<number, Entry>();

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

  const remember = (build: Build, node: number): number => {
    let key = 0;
    for (let at = 0; at < places.length; at++) {
      key = key * ((banks[at]?.length ?? 0) + 1) + (build[places[at] as number] as number) + 1;
    }
    let entry = entries.get(key);
    if (!entry) {
      entry = {
        standing: standingIn(build, places, banks, tables),
        values: new Float64Array(CELLS + 1).fill(Number.NaN),
      };
      entries.set(key, entry);
    }
    let value = entry.values[node] as number;
    if (Number.isNaN(value)) {
      value =
        only !== undefined && build[only] === OPEN ? bestOf(build, only, node) : costAt(entry.standing, node);
      entry.values[node] = value;
    }
    return value;
  };

  /** The only place of a leg, still open: the best of its options, each of which is of use later. */
  const only = places.length === 1 ? places[0] : undefined;
  const bestOf = (build: Build, place: number, node: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (let option = 0; option < (banks[0]?.length ?? 0); option++) {
      least = Math.min(least, remember(build.with(place, option), node));
    }
    return least;
  };

  return remember;
}
