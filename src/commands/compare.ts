import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { withLostFans } from '../enclosure/lost-fans.ts';
import { bankIn } from '../enclosure/stages.ts';
import type { FanModel } from '../fan/fan-model.ts';
import { compareCsv, compareDocument } from '../presentation/questions/compare-data.ts';
import { compareView } from '../presentation/questions/compare-view.ts';
import { compare } from '../questions/compare/compare.ts';
import { nextLarger } from '../questions/compare/next-larger.ts';
import { arrangements, fanVariants, namedVariants, type Variant } from '../questions/compare/variants.ts';
import { rebasedFan } from '../sound/rating-basis.ts';
import { chosenBuild, dutyRefusal, hintOf, namedBuild, refuseCall } from './chosen-build.ts';
import { type ScenarioOptions, type Work, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';

/** Options of `compare`. */
export interface CompareCommandOptions extends ScenarioOptions {
  /** Two or more: these builds. One: the build to start from. */
  readonly build: readonly string[];
  /** Place whose fans are compared. */
  readonly bank: string | undefined;
  /** Two or more: these fans in that place. One: the fan to arrange. */
  readonly fan: readonly string[];
  readonly larger: string | undefined;
  readonly duty: string | undefined;
  /** [dB] */
  readonly level: number | undefined;
  readonly csv: boolean;
}

/** The place that is compared unless the user names one: on fins if there is such a one, else the first. */
function usualPlace({ legs, places }: Enclosure): number {
  const isFins = (index: number): boolean => {
    const place = places[index];
    return (
      place?.kind === 'element' && place.options.some(({ element }) => element.finResistance !== undefined)
    );
  };
  const onFins = legs.find(
    ({ through }) => through.some(isFins) && through.some((index) => places[index]?.kind === 'bank'),
  );
  const among = onFins?.through ?? legs.flatMap(({ through }) => through);
  return among.find((index) => places[index]?.kind === 'bank') ?? -1;
}

function placeOf(enclosure: Enclosure, name: string | undefined): number | string {
  if (name === undefined) {
    const place = usualPlace(enclosure);
    return place < 0 ? 'the scenario has no place for fans' : place;
  }
  const place = enclosure.places.findIndex(({ id, kind }) => id === name && kind === 'bank');
  if (place >= 0) return place;
  return `there is no place for fans "${name}"${hintOf(
    name,
    enclosure.places.filter(({ kind }) => kind === 'bank'),
  )}`;
}

/** Fans of the catalogs, rated as the scenario assumes. */
function catalogFan({ catalog, enclosure }: Work, id: string): FanModel | string {
  const found = catalog.fans.find((fan) => fan.id === id);
  if (found) return rebasedFan(found, enclosure.assumptions.sound);
  const [near] = hintOf(id, catalog.fans).split('; there are');
  return `the catalog has no fan "${id}"${near ?? ''}`;
}

/** The fan of a place in a build, or of another place of its leg. */
function fanThere(enclosure: Enclosure, build: Build, place: number): FanModel | undefined {
  const own = bankIn(enclosure, build, place)?.fan;
  if (own) return own;
  const { through = [] } = enclosure.legs.find((leg) => leg.through.includes(place)) ?? {};
  return through.map((index) => bankIn(enclosure, build, index)?.fan).find((fan) => fan !== undefined);
}

function namedOnes(
  { enclosure }: Work,
  names: readonly string[],
  place: number,
): readonly Variant[] | string {
  const wrong = names.map((name) => namedBuild(enclosure, name)).find((each) => 'refusal' in each);
  if (wrong && 'refusal' in wrong) return wrong.refusal;
  const builds = names.flatMap((name) => enclosure.builds.find(({ id }) => id === name) ?? []);
  return namedVariants(enclosure, builds, place);
}

async function variantsOf(
  work: Work,
  options: CompareCommandOptions,
  place: number,
): Promise<readonly Variant[] | string> {
  const { enclosure, catalog } = work;
  if (options.build.length > 1) return namedOnes(work, options.build, place);
  const chosen = await chosenBuild(work, options.build[0]);
  if ('refusal' in chosen) return chosen.refusal;
  const start = { enclosure: withLostFans(enclosure, chosen.build, chosen.lost ?? []), build: chosen.build };
  const asked = options.fan.map((id) => catalogFan(work, id));
  const wrong = asked.find((fan) => typeof fan === 'string');
  if (typeof wrong === 'string') return wrong;
  const fans = asked.filter((fan) => typeof fan !== 'string');
  const count = bankIn(enclosure, chosen.build, place)?.count ?? 1;
  if (fans.length > 1) return fanVariants(start, place, fans, count);
  const fan = fans[0] ?? fanThere(enclosure, chosen.build, place);
  if (!fan) return `no fan stands there in this build: name one with --fan`;
  const larger =
    options.larger === undefined ? nextLarger(fan, catalog.fans) : catalogFan(work, options.larger);
  if (typeof larger === 'string') return larger;
  return arrangements(start, place, fan, larger && rebasedFan(larger, enclosure.assumptions.sound));
}

/** Holds builds, arrangements of a fan or several fans against each other. */
export function run(options: CompareCommandOptions): Promise<ExitCode> {
  return withScenario('compare', options, async (work) => {
    const { enclosure, console, meta } = work;
    const place = placeOf(enclosure, options.bank);
    if (typeof place === 'string') return refuseCall(work, options, place);
    const refusal = dutyRefusal(work, options.duty);
    if (refusal !== null) return refuseCall(work, options, refusal);
    const variants = await variantsOf(work, options, place);
    if (typeof variants === 'string') return refuseCall(work, options, variants);
    const comparison = compare(variants, { place, duty: options.duty, level: options.level });
    if (options.csv) console.out(compareCsv(comparison));
    else
      work.answer(
        () => compareDocument(enclosure.title, comparison, invented(variants, withInvented, meta)),
        () =>
          `${compareView(enclosure.title, comparison, { paint: console.paint, width: console.width })}${noteOf(variants)}`,
      );
    return comparison.best < 0 ? EXIT.noneAdequate : EXIT.answered;
  });
}

/** Says once if any variant holds fans that do not exist. */
function noteOf(variants: readonly Variant[]): string {
  return (
    variants.map(({ enclosure, build }) => inventedNote(enclosure, [build])).find((note) => note !== '') ?? ''
  );
}

function invented(variants: readonly Variant[], warn: typeof withInvented, meta: Work['meta']): Work['meta'] {
  const told = variants.map(({ enclosure, build }) => warn(meta, enclosure, [build]));
  return told.find((each) => each !== meta) ?? meta;
}
