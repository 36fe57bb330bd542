import type { Enclosure } from '../enclosure/enclosure.ts';
import { assemble, plantOf } from '../enclosure/machine.ts';
import type { Fraction } from '../quantities/dimensions.ts';
import type { DemandOnBuilds } from '../search/asks/demand-on-builds.ts';
import { fasterIsCooler } from '../search/monotone-airway.ts';
import { confidentSpeeds } from './confident-speeds.ts';
import { withSureMargins } from './sure-margin.ts';

/**
 * The demand that builds hold all limits in all duties with a given probability, for a search.
 *
 * @param enclosure the scenario
 * @param confidence probability asked for [-], above 0.5, below 1
 */
export function confidenceDemand(enclosure: Enclosure, confidence: Fraction): DemandOnBuilds {
  const plant = plantOf(enclosure);
  const monotone = fasterIsCooler(plant);
  return {
    atLeast: withSureMargins(enclosure, confidence),
    meet: (build, start, isTooLoud) => {
      const found = confidentSpeeds(assemble(plant, build), { monotone, confidence, start, isTooLoud });
      return found ? { speeds: found.ratios, energies: found.energies } : null;
    },
  };
}
