import type { Assumptions } from '../enclosure/assumptions.ts';
import type { Enclosure } from '../enclosure/enclosure.ts';
import type { FanModel } from '../fan/fan-model.ts';
import type { Kelvins, Pascals } from '../quantities/dimensions.ts';
import { rebasedFan } from '../sound/rating-basis.ts';
import { readBuildWishes } from './asks/build-wishes.ts';
import { readAssumptions } from './assume.ts';
import { readBuilds } from './builds.ts';
import type { Catalog } from './catalog-file.ts';
import { readDuties } from './duties.ts';
import { check, type Findings, isMap, keysOnly, placeFindings, type WrittenMap } from './findings.ts';
import { valueAt } from './form-tree.ts';
import { readAirway } from './legs.ts';
import { checkLimits } from './part-limits.ts';
import { readParts } from './parts.ts';
import { readPlaces } from './places.ts';
import type { Problem } from './problem.ts';
import { type Reading, readReadings } from './readings.ts';
import { marginForm, scenarioForm, titleForm } from './scenario-form.ts';
import { readListener, readSite } from './site.ts';
import { readSkins } from './skins.ts';
import type { StockItem } from './stock/stock-item.ts';
import { readUncertainties } from './uncertainty.ts';
import { type Setting, withSettings } from './variants/settings.ts';
import { MOST_NODES, parseYaml } from './yaml-source.ts';

/** A scenario, or everything that is wrong with its file. */
export type ScenarioOutcome =
  | { readonly ok: true; readonly enclosure: Enclosure; readonly readings: readonly Reading[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const keysForm = keysOnly(scenarioForm);

/** Room temperature that duties refer to while the site's own cannot be read [K]; no result depends on it. */
const UNKNOWN_ROOM: Kelvins = 0;
/** Room pressure while the site cannot be read [Pa]; no result depends on it. */
const UNKNOWN_PRESSURE: Pascals = 101_325;

/**
 * Reads a scenario.
 *
 * @param file its name, for messages
 * @param text its content
 * @param fans of the catalog, for places that may hold any
 * @param stock of the catalog, for elements that call for it
 * @param settings values that are to stand in place of what is written
 */
export function readScenario(
  file: string,
  text: string,
  fans: readonly FanModel[],
  stock: readonly StockItem[] = [],
  settings: readonly Setting[] = [],
): ScenarioOutcome {
  const parsed = parseYaml(file, text, MOST_NODES.scenario);
  if (!parsed.ok) return { ok: false, problems: [parsed.problem] };
  const findings: Findings = [];
  const scenario = readSections(withSettings(parsed.source.value, settings), { fans, stock }, findings);
  if (scenario && findings.length === 0) return { ok: true, ...scenario };
  if (findings.length === 0) throw new Error('a scenario could not be read, and no section said why');
  return { ok: false, problems: placeFindings(parsed.source, findings) };
}

interface Scenario {
  readonly enclosure: Enclosure;
  readonly readings: readonly Reading[];
}

/** Every section is read even if another is wrong, so that one run tells all. */
function readSections(written: unknown, catalog: Catalog, findings: Findings): Scenario | undefined {
  check(keysForm, written, [], findings);
  if (!isMap(written)) return undefined;
  /** A section that is absent has been reported by its key, if it is needed at all. */
  function section<Value>(key: string, read: (value: unknown) => Value): Value | undefined {
    const value = valueAt(written, [key]);
    return value === undefined ? undefined : read(value);
  }
  const title = section('title', (value) => check(titleForm, value, ['title'], findings));
  const site = section('site', (value) => readSite(value, findings));
  const listener = section('listener', (value) => readListener(value, findings));
  const margin = section('margin', (value) => check(marginForm, value, ['margin'], findings));
  const assumptions = readAssumptions(valueAt(written, ['assume']), findings);
  const { elements, choices, heat, airway, duties, builds, readings } = written;
  const { names: placeNames, places } = readPlaces(
    { elements, choices },
    rebased(catalog, assumptions),
    otherNames(written),
    findings,
  );
  const { chambers, legs } = readAirway(airway, placeNames, findings);
  const { names: partNames, parts } = readParts(heat, { placeNames, places, chambers }, findings);
  const room = site?.room ?? UNKNOWN_ROOM;
  const states = readDuties(duties, { partNames, room }, findings);
  const rooms = states.map((duty) => duty?.room ?? UNKNOWN_ROOM);
  const hottest = Math.max(...rooms);
  checkLimits(heat, parts, hottest, findings);
  const pressure = site?.site.pressure ?? UNKNOWN_PRESSURE;
  const wall = { chambers, pressure, hottest, share: assumptions.heat.panelShare };
  const skins = readSkins(valueAt(written, ['skin']), wall, findings);
  const named = readBuilds(builds, { placeNames, places, choices }, findings);
  const context = { placeNames, places, builds: named, partNames, chambers, room };
  const measured = readReadings(readings, context, findings);
  const bearers = {
    parts: partNames,
    elements: placeNames,
    chambers,
    legs: legs.flatMap((leg) => leg?.id ?? []),
    fans: catalog.fans.map(({ id }) => id),
  };
  const wished = readBuildWishes(written, { legs, placeNames, places }, findings);
  const uncertainties = readUncertainties(valueAt(written, ['uncertainty']), bearers, findings);
  if (!site || !listener) return undefined;
  const enclosure = {
    title: title ?? '',
    site: site.site,
    listener,
    chambers,
    places: placeNames.map((name) => places.get(name)),
    legs,
    parts,
    ...(skins.length > 0 ? { skins } : {}),
    duties: states,
    builds: named,
    margin: margin ?? 0,
    ...wished,
    assumptions,
    ...(uncertainties ? { uncertainties } : {}),
  };
  return isComplete(enclosure) ? { enclosure, readings: measured } : undefined;
}

/** The catalog with the ratings of its fans as the scenario's assumptions have them. */
function rebased(catalog: Catalog, { sound }: Assumptions): Catalog {
  return { ...catalog, fans: catalog.fans.map((fan) => rebasedFan(fan, sound)) };
}

/** An enclosure some of whose things could not be read. */
type Draft = Omit<Enclosure, 'places' | 'legs' | 'parts' | 'duties'> & {
  readonly [Key in 'places' | 'legs' | 'parts' | 'duties']: readonly (Enclosure[Key][number] | undefined)[];
};

function isComplete(draft: Draft): draft is Enclosure {
  const { places, legs, parts, duties } = draft;
  return [places, legs, parts, duties].every((list) => list.every((item) => item !== undefined));
}

/** Names that stand for something else than an element, with what they are. */
function otherNames(written: WrittenMap): ReadonlyMap<string, string> {
  const others = new Map<string, string>();
  const collect = (list: unknown, what: string, key?: string) => {
    for (const item of Array.isArray(list) ? list : []) {
      const name: unknown = key === undefined ? item : valueAt(item, [key]);
      if (typeof name === 'string') others.set(name, what);
    }
  };
  collect(valueAt(written, ['heat']), 'a part', 'part');
  collect(valueAt(written, ['airway', 'chambers']), 'a chamber');
  collect(valueAt(written, ['airway', 'legs']), 'a leg', 'leg');
  return others;
}
