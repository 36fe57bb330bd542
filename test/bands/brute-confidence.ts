import { confidenceDemand } from '../../src/bands/confidence.ts';
import { confidentSpeeds } from '../../src/bands/confident-speeds.ts';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { rankingOf } from '../../src/search/rank.ts';
import { beginSearch } from '../../src/search/search.ts';
import { levelOf } from '../../src/sound/levels.ts';
import { buildsOf } from '../search/builds.ts';

/** Probability asked for [-]. */
export const CONFIDENCE = 0.9;

/** The search's own list. */
export function confidentRanking(enclosure: Enclosure, top: number) {
  const demand = confidenceDemand(enclosure, CONFIDENCE);
  const search = beginSearch(enclosure, { top, gap: 0.01, demand });
  while (search.step());
  return rankingOf(search);
}

/** Levels of all builds that can be as sure, each worked out by itself: brute force. */
export function allLevels(enclosure: Enclosure): readonly number[] {
  const plant = plantOf(enclosure);
  const monotone = fasterIsCooler(plant);
  return buildsOf(enclosure)
    .flatMap((build) => {
      const found = confidentSpeeds(assemble(plant, build), { monotone, confidence: CONFIDENCE });
      if (!found) return [];
      const mean = found.energies.reduce(
        (sum, value, duty) => sum + (enclosure.duties[duty]?.share ?? 0) * value,
        0,
      );
      return [levelOf(mean)];
    })
    .toSorted((one, other) => one - other);
}
