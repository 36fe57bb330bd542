import { type BankCloseness, type CountedSides, closenessCost } from './bank-closeness.ts';
import type { LegDemand } from './demand.ts';
import { PRICES } from './duals/effort-dual.ts';
import type { LegBanks } from './leg-banks.ts';
import { type BankDuals, type Counting, dualsOf, type Needs } from './leg-cost.ts';
import { groupAt, type OptionTree } from './option-tree.ts';
import { createSharedDuals, type SharedDuals } from './shared-duals.ts';

/** How a group counts in its leg. */
interface GroupCounting {
  /** Whether another bank is sure to run before it. */
  readonly behind: boolean;
  readonly sides: CountedSides;
}

/** Duals at a node of the grid of pressures. */
export type DualsAt = (node: number, demand: LegDemand, needs: Needs) => BankDuals;

/** Lowers the best values to those of a dual with what is lost beside it. */
function lower(best: Float64Array, values: Float64Array, lost: number): void {
  for (let price = 0; price < best.length; price++) {
    const value = (values[price] as number) + (PRICES[price] as number) * lost;
    if (value < (best[price] as number)) best[price] = value;
  }
}

/** The best of several duals at every price: a place whose bank is not chosen yet. */
function envelope(duals: readonly BankDuals[], needs: Needs, mayBeEmpty: boolean): BankDuals {
  const start = mayBeEmpty ? 0 : Number.POSITIVE_INFINITY;
  const most = needs.stretches.map(() => (mayBeEmpty ? 0 : Number.NEGATIVE_INFINITY));
  const stretches = needs.stretches.map((_, stretch) => {
    const best = new Float64Array(PRICES.length).fill(start);
    for (const dual of duals) {
      const lost = dual.lost[stretch] as number;
      lower(best, dual.stretches[stretch] as Float64Array, lost);
      most[stretch] = Math.max(most[stretch] as number, (dual.most[stretch] as number) - lost);
    }
    return best;
  });
  return { stretches, most, lost: needs.stretches.map(() => 0) };
}

/** Keeps what has been worked out for each node. */
function remembered(make: DualsAt): DualsAt {
  const known = new Map<number, BankDuals>();
  return (node, demand, needs) => {
    const found = known.get(node) ?? make(node, demand, needs);
    known.set(node, found);
    return found;
  };
}

/** Tables of groups that serve many sets of elements: those in which the same banks stand alike. */
export interface SharedTables {
  readonly trees: readonly OptionTree[];
  readonly kept: { readonly place: number; readonly banks: LegBanks[number]; readonly duals: SharedDuals }[];
}

function alike(first: LegBanks[number], second: LegBanks[number]): boolean {
  return first.every((bank, option) => {
    const other = second[option];
    return bank?.placed === other?.placed && bank?.derating === other?.derating;
  });
}

function sharedFor(tables: SharedTables, place: number, banks: LegBanks[number]): SharedDuals {
  const found = tables.kept.find((entry) => entry.place === place && alike(entry.banks, banks));
  if (found) return found.duals;
  const duals = createSharedDuals(tables.trees[place] as OptionTree, banks);
  tables.kept.push({ place, banks, duals });
  return duals;
}

/**
 * Duals of every option and group of the places of a leg, made when first asked for.
 *
 * @param places bank places of the leg, in stream order
 * @param banks options of each
 * @param shared tables of large groups, for all sets of elements
 */
export function dualTables(places: readonly number[], banks: LegBanks, shared: SharedTables) {
  const known = new Map<string, DualsAt>();
  const treeOf = (at: number) => shared.trees[places[at] as number] as OptionTree;
  const common = places.map((place, at) => sharedFor(shared, place, banks[at] ?? []));

  const ofBank = (at: number, option: number, counting: Counting): DualsAt => {
    const { derating, sides } = counting;
    const bank = banks[at]?.[option];
    if (!bank) throw new RangeError(`option ${option} is no bank`);
    const key = `${at}/${option}/${derating}/${sides.before}/${sides.behind}`;
    const found = known.get(key) ?? remembered((_, demand, needs) => dualsOf(bank, counting, demand, needs));
    known.set(key, found);
    return found;
  };

  /** Of a group of one row, from the tables of all sets of elements. */
  const ofRow =
    (at: number, code: number, { behind, sides }: GroupCounting): DualsAt =>
    (_, demand, needs) => {
      const [first] = groupAt(treeOf(at), code).options;
      const closeness = banks[at]?.[first as number]?.closeness as BankCloseness;
      const density = demand.densities[closeness.stage] as number;
      const most: number[] = [];
      const lost: number[] = [];
      const stretches = needs.stretches.map(({ from, to }) => {
        const flow = demand.flow * from;
        const shared = (common[at] as SharedDuals)(code, { from: flow, reach: to / from, density, behind });
        most.push(shared.most);
        lost.push(closenessCost(closeness, sides, demand, flow));
        return shared.values;
      });
      return { stretches, most, lost };
    };

  const ofMixed = (at: number, code: number, counting: GroupCounting): DualsAt => {
    const { parts, mayBeEmpty } = groupAt(treeOf(at), code);
    const members = parts.flatMap((part) => {
      if (part < 0) return [ofGroup(at, part, counting)];
      const bank = banks[at]?.[part];
      const derating = bank && counting.behind ? bank.derating : 1;
      return bank ? [ofBank(at, part, { derating, sides: counting.sides })] : [];
    });
    return (node, demand, needs) =>
      envelope(
        members.map((member) => member(node, demand, needs)),
        needs,
        mayBeEmpty,
      );
  };

  const ofGroup = (at: number, code: number, counting: GroupCounting): DualsAt => {
    const { behind, sides } = counting;
    const key = `${at}/${code}/${behind}/${sides.before}/${sides.behind}`;
    const { oneRow } = groupAt(treeOf(at), code);
    const found = known.get(key) ?? remembered((oneRow ? ofRow : ofMixed)(at, code, counting));
    known.set(key, found);
    return found;
  };
  return { ofBank, ofGroup };
}
