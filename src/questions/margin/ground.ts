import type { Enclosure, LostThere } from '../../enclosure/enclosure.ts';
import { withLostFans } from '../../enclosure/lost-fans.ts';
import { assemble, type Machine, plantOf } from '../../enclosure/machine.ts';
import { bankIn } from '../../enclosure/stages.ts';
import type { Fraction, Metres } from '../../quantities/dimensions.ts';
import { readVariant, writtenTree } from '../../reading/variants/scenario-source.ts';
import type { Setting } from '../../reading/variants/settings.ts';
import { sameBuild } from '../same-build.ts';
import { problemLine, type ScenarioBuild } from '../varied-scenario.ts';
import { loadedFilters } from './dust.ts';

/** A scenario at one altitude with one load of dust, and the build in it. */
export interface Ground {
  readonly enclosure: Enclosure;
  readonly build: readonly number[];
  readonly altitude?: Metres;
  readonly dust?: Fraction;
}

/**
 * Reads the scenario at another altitude, with dust in its filters.
 *
 * @param base scenario and build
 * @param altitude [m]; the scenario's own place if undefined
 * @param dust share of what the filters may hold [-]; what the scenario says if undefined
 * @returns the ground, or why it cannot be read
 */
export function groundOf(
  base: ScenarioBuild,
  altitude: Metres | undefined,
  dust: Fraction | undefined,
): Ground | string {
  const settings: Setting[] = [
    { path: ['builds'], value: undefined },
    { path: ['readings'], value: undefined },
    ...(altitude === undefined
      ? []
      : [
          { path: ['site', 'pressure'], value: undefined },
          { path: ['site', 'altitude'], value: `${altitude} m` },
        ]),
    ...(dust === undefined ? [] : loadedFilters(writtenTree(base.source), `${100 * dust} %`)),
  ];
  const own = altitude === undefined && dust === undefined;
  const read = own ? undefined : readVariant(base.source, settings);
  if (read && !read.ok)
    return read.problems[0] ? problemLine(read.problems[0]) : 'the scenario cannot be read';
  const enclosure = read?.ok ? read.enclosure : base.enclosure;
  const build = sameBuild(base.enclosure, base.build, enclosure, []);
  if (typeof build === 'string') return build;
  return {
    enclosure,
    build,
    ...(altitude === undefined ? {} : { altitude }),
    ...(dust === undefined ? {} : { dust }),
  };
}

/** What may be lost: nothing more, then one fan of each place that has some. */
export function losses(
  { enclosure, build, lost = [] }: ScenarioBuild,
  wanted: boolean,
): readonly (LostThere | undefined)[] {
  if (!wanted) return [undefined];
  const there = enclosure.places.flatMap((_, place): readonly LostThere[] => {
    const before = lost.find((each) => each.place === place);
    const turning =
      (bankIn(enclosure, build, place)?.count ?? 0) - (before ? before.dead + before.missing : 0);
    return turning > 0 ? [{ place, dead: 1, missing: 0 }] : [];
  });
  return [undefined, ...there];
}

/** The build on a ground, with a fan lost or not. */
export function machineFor(
  base: ScenarioBuild,
  { enclosure, build }: Ground,
  loss: LostThere | undefined,
): Machine {
  const lost = [...(base.lost ?? []), ...(loss ? [loss] : [])];
  return assemble(plantOf(withLostFans(enclosure, build, lost)), build);
}

/** Index of a duty by its name, or of the hardest: the most heat, then the warmest room. */
export function dutyIndex({ duties, parts }: Enclosure, name: string | undefined): number {
  const named = duties.findIndex(({ id }) => id === name);
  if (named >= 0) return named;
  const heats = duties.map(({ heat }) =>
    parts.reduce((sum, part, index) => sum + part.power * (heat[index] ?? 0), 0),
  );
  const most = Math.max(...heats);
  // Of equally hot duties the one in the warmest room.
  const hottest = duties.reduce(
    (best, { room }, index) =>
      heats[index] === most && (best < 0 || room > (duties[best]?.room ?? 0)) ? index : best,
    -1,
  );
  return Math.max(0, hottest);
}
