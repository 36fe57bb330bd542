import { readdirSync, readFileSync } from 'node:fs';
import type { Build, Enclosure } from '../../src/enclosure/enclosure.ts';
import { readCatalogs, readScenario } from '../../src/index.ts';
import { type SpacePlan, spaceOf } from './spaces.ts';

/** What a way of finding the quietest build came to. */
export interface RivalResult {
  readonly method: string;
  /** Level of the quietest adequate build it found, by the whole model [dB(A)]; null if it found none. */
  readonly level: number | null;
  /** Processor time it took, or would take by what was measured [s]. */
  readonly seconds: number;
  /** True if the time was not spent but worked out from a sample. */
  readonly extrapolated?: boolean;
  /** What is known about builds it does not show. */
  readonly proof: string;
}

/** The same question put to all of them: the one quietest adequate build of an enclosure. */
export interface Task {
  readonly title: string;
  readonly enclosure: Enclosure;
}

/** Seconds of processor time this process has used: the clock on the wall also counts what others do. */
export function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) * 1e-6;
}

function enclosureOf(file: string, folder: string): Enclosure {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort();
  const catalog = readCatalogs(
    files.map((name) => ({ file: name, text: readFileSync(`${folder}/${name}`, 'utf8') })),
  );
  if (!catalog.ok) throw new Error(`${folder} has problems`);
  const scenario = readScenario(file, readFileSync(file, 'utf8'), catalog.fans);
  if (!scenario.ok) throw new Error(`${file} has problems`);
  return scenario.enclosure;
}

/** A shipped scenario with the shipped catalog. */
export function shippedEnclosure(name: string): Enclosure {
  return enclosureOf(`scenarios/${name}.yaml`, 'catalog');
}

/** A generated space, once it is written. */
export function generatedEnclosure(plan: SpacePlan): Enclosure {
  const { scenario, catalog } = spaceOf(plan);
  return enclosureOf(scenario, catalog ?? '');
}

/** An enclosure with some options of its places only, their order kept; places without an entry keep all. */
export function cutOf(
  enclosure: Enclosure,
  kept: Readonly<Record<string, (option: number) => boolean>>,
): Enclosure {
  const places = enclosure.places.map((place) => {
    const keep = kept[place.id];
    if (!keep) return place;
    return place.kind === 'bank'
      ? { ...place, options: place.options.filter((_, option) => keep(option)) }
      : { ...place, options: place.options.filter((_, option) => keep(option)) };
  });
  return { ...enclosure, places, builds: [] };
}

/** Builds of an enclosure. */
export function countOf({ places }: Enclosure): number {
  return places.reduce((product, { options }) => product * options.length, 1);
}

/** The build of a number from 0 to one less than their count. */
export function buildAt({ places }: Enclosure, number: number): Build {
  let rest = number;
  return places.map(({ options }) => {
    const option = rest % options.length;
    rest = Math.floor(rest / options.length);
    return option;
  });
}
