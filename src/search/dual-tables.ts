import type { CountedSides } from './bank-closeness.ts';
import { PRICES } from './bank-effort.ts';
import type { LegDemand } from './demand.ts';
import { CELLS } from './demand-table.ts';
import { type BankDuals, type Counting, dualsOf, type LegBank, type Needs } from './leg-cost.ts';

/** Duals at a node of the grid of pressures. */
export type DualsAt = (node: number, demand: LegDemand, needs: Needs) => BankDuals;

/** The best of several duals at every price: a place whose bank is not chosen yet. */
function envelope(duals: readonly BankDuals[], needs: Needs, mayBeEmpty: boolean): BankDuals {
  const start = mayBeEmpty ? 0 : Number.POSITIVE_INFINITY;
  const most = new Float64Array(needs.stretches.length).fill(mayBeEmpty ? 0 : Number.NEGATIVE_INFINITY);
  const stretches = needs.stretches.map((_, stretch) => {
    const best = new Float64Array(PRICES.length).fill(start);
    for (const dual of duals) {
      const values = dual.stretches[stretch] as Float64Array;
      for (let price = 0; price < best.length; price++) {
        best[price] = Math.min(best[price] as number, values[price] as number);
      }
      most[stretch] = Math.max(most[stretch] as number, dual.most[stretch] as number);
    }
    return best;
  });
  return { stretches, most };
}

/** Keeps what has been worked out for each node. */
function remembered(make: DualsAt): DualsAt {
  const known = new Array<BankDuals | undefined>(CELLS + 1);
  return (node, demand, needs) => {
    const found = known[node] ?? make(node, demand, needs);
    known[node] = found;
    return found;
  };
}

/**
 * Duals of every option of the places of a leg, made when first asked for.
 *
 * @param banks options of each place, in stream order
 */
export function dualTables(banks: readonly (readonly (LegBank | null)[])[]) {
  const known = new Map<string, DualsAt>();
  const ofBank = (at: number, option: number, bank: LegBank, counting: Counting): DualsAt => {
    const { derating, sides } = counting;
    const key = `${at}/${option}/${derating}/${sides.before}/${sides.behind}`;
    const found = known.get(key) ?? remembered((_, demand, needs) => dualsOf(bank, counting, demand, needs));
    known.set(key, found);
    return found;
  };
  const ofOpen = (at: number, behind: boolean, sides: CountedSides): DualsAt => {
    const key = `${at}/open/${behind}/${sides.before}/${sides.behind}`;
    const options = banks[at] ?? [];
    const found =
      known.get(key) ??
      remembered((node, demand, needs) => {
        const duals = options.flatMap((bank, option) =>
          bank
            ? [ofBank(at, option, bank, { derating: behind ? bank.derating : 1, sides })(node, demand, needs)]
            : [],
        );
        return envelope(duals, needs, options.includes(null));
      });
    known.set(key, found);
    return found;
  };
  return { ofBank, ofOpen };
}
