import type { Enclosure, Place } from '../../src/enclosure/enclosure.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { SCENARIO } from './samples.ts';
import { fans } from './scenario-cases.ts';

/** A scenario that must be right. */
export function scenario(text: string) {
  const outcome = readScenario('scanner.yaml', text, fans);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome;
}

/** A place by its name. */
export function place(enclosure: Enclosure, id: string): Place | undefined {
  return enclosure.places.find((each) => each.id === id);
}

/** What may stand in a place, in words. */
export function optionsOf(enclosure: Enclosure, id: string): readonly string[] {
  const found = place(enclosure, id);
  if (found?.kind === 'element') return found.options.map(({ label }) => label);
  return found?.options.map((bank) => (bank ? `${bank.fan.id} x${bank.count}` : 'empty')) ?? [];
}

/** The sample without its builds and readings, whose words depend on the choices. */
export const bare = SCENARIO.slice(0, SCENARIO.indexOf('builds:'));
