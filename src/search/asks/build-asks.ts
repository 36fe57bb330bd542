import { bankDepth, bankPower, bankPrice } from '../../enclosure/build-costs.ts';
import type { BankPlace, Build, Enclosure } from '../../enclosure/enclosure.ts';
import type { OptionForest } from '../option-tree.ts';
import { optionCosts, sumOf } from './option-costs.ts';
import type { AskReason } from './reasons.ts';

/** What every build of a set breaks of what is asked, whatever its speeds; null if some may do. */
export type BuildAsks = (build: Build) => AskReason | null;

/** Rounding of sums that should be equal to what is asked [-]. */
const ROUNDING = 1e-9;

function exceeds(found: number, most: number): boolean {
  return found > most * (1 + ROUNDING) + ROUNDING;
}

/** Different models among the places that are decided: no build of the set has fewer. */
function modelsDecided({ places }: Enclosure, build: Build): number {
  const models = new Set<string>();
  places.forEach((place, index) => {
    const bank = place.kind === 'bank' ? (place as BankPlace).options[build[index] as number] : null;
    if (bank) models.add(bank.fan.id);
  });
  return models.size;
}

/**
 * Prepares what can be told of a set of builds before anything is solved: sums over its banks, of each group the least,
 * and the models that are decided.
 *
 * @param enclosure the scenario with what is asked
 * @param forest groups of the options of its places
 */
export function createBuildAsks(enclosure: Enclosure, forest: OptionForest): BuildAsks {
  const { asks = {}, headers = [] } = enclosure;
  const { price, ratedPower, models, depths = [] } = asks;
  const all = [...enclosure.places.keys()];
  const prices = optionCosts(enclosure, forest, bankPrice);
  const powers = optionCosts(enclosure, forest, bankPower);
  const depth = optionCosts(enclosure, forest, bankDepth);
  const checks: (readonly [AskReason, (build: Build) => boolean])[] = [];
  if (price !== undefined) {
    checks.push(['dearer than asked', (build) => exceeds(sumOf(prices, build, all), price)]);
  }
  if (ratedPower !== undefined) {
    const isMore = (build: Build): boolean => exceeds(sumOf(powers, build, all), ratedPower);
    checks.push(['of more fan power than asked', isMore]);
  }
  for (const { places, current } of headers) {
    if (!current) continue;
    const most = current.most * current.voltage;
    const isMore = (build: Build): boolean => exceeds(sumOf(powers, build, places), most);
    checks.push(['of more current than a header may give', isMore]);
  }
  if (models !== undefined) {
    checks.push(['of more models than asked', (build) => modelsDecided(enclosure, build) > models]);
  }
  for (const { leg, most } of depths) {
    const places = enclosure.legs[leg]?.through ?? [];
    checks.push(['deeper than asked', (build) => exceeds(sumOf(depth, build, places), most)]);
  }
  return (build) => checks.find(([, isBroken]) => isBroken(build))?.[0] ?? null;
}
