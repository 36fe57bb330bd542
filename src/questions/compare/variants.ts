import type { Bank, Build, Enclosure, NamedBuild } from '../../enclosure/enclosure.ts';
import { withLostFans } from '../../enclosure/lost-fans.ts';
import type { FanModel } from '../../fan/fan-model.ts';
import type { Metres } from '../../quantities/dimensions.ts';
import { type StartBuild, withBank, withBankBehind } from './placing.ts';

/** One way to build, to be held against others. */
export interface Variant {
  readonly name: string;
  readonly enclosure: Enclosure;
  readonly build: Build;
  /** Places on the way of the compared fans, in stream order: their fans stand in a stack. */
  readonly stack: readonly number[];
  /** What would have to change in the box for it; empty if nothing. */
  readonly needs: string;
}

/** Where the compared fans may stand. */
interface Site {
  readonly place: number;
  /** Another place for fans of the same way, with fins between if there is such a one. */
  readonly partner: number | undefined;
  /** Whether fins lie on the way before the place. */
  readonly behindFins: boolean;
  readonly fins: boolean;
}

function siteOf({ enclosure, build }: StartBuild, place: number): Site {
  const through = enclosure.legs.find((leg) => leg.through.includes(place))?.through ?? [];
  const isFins = (index: number): boolean => {
    const there = enclosure.places[index];
    return there?.kind === 'element' && there.options[build[index] ?? 0]?.element.disturbance === 'fins';
  };
  const fins = through.findIndex(isFins);
  const at = through.indexOf(place);
  const others = through.filter((index) => index !== place && enclosure.places[index]?.kind === 'bank');
  const across = others.find((index) => fins >= 0 && through.indexOf(index) > fins !== at > fins);
  return {
    place,
    partner: across ?? others[0],
    behindFins: fins >= 0 && at > fins,
    fins: fins >= 0 && across !== undefined,
  };
}

function millimetres(length: Metres): string {
  return `${Number((1000 * length).toFixed(1))} mm`;
}

/** Bare start: the place and its partner empty. */
function cleared(start: StartBuild, { place, partner }: Site): StartBuild {
  const alone = withBank(start, place, null);
  return partner === undefined ? alone : withBank(alone, partner, null);
}

/**
 * The usual arrangements of one fan in a place: one, one on the other side of the fins, both, two side by side, one
 * larger. Without a second place on its way the pair in line stands fan to fan.
 *
 * @param start scenario and build: all other places stay as they are
 * @param place where the fan stands
 * @param fan to arrange
 * @param larger the larger fan; none if absent
 */
export function arrangements(
  start: StartBuild,
  place: number,
  fan: FanModel,
  larger: FanModel | undefined,
): readonly Variant[] {
  const site = siteOf(start, place);
  const bare = cleared(start, site);
  const one: Bank = { fan, count: 1 };
  const { partner } = site;
  const stack = partner === undefined ? [place] : [place, partner];
  const [own, other] = site.behindFins ? ['pull', 'push'] : ['push', 'pull'];
  const make = (name: string, made: StartBuild, needs = ''): Variant => ({ name, ...made, stack, needs });
  const single = withBank(bare, place, one);
  const pair =
    partner === undefined
      ? {
          ...make('two in line', withBankBehind(single, place, one), `${millimetres(fan.depth)} more depth`),
          stack: [place, start.enclosure.places.length],
        }
      : make(site.fins ? 'push-pull' : 'two in line', withBank(single, partner, one));
  const room = `a face of ${millimetres(2 * fan.size)} by ${millimetres(fan.size)}`;
  return [
    make(site.fins ? own : 'one', single),
    ...(partner !== undefined && site.fins ? [make(other, withBank(bare, partner, one))] : []),
    pair,
    make('side by side', withBank(bare, place, { fan, count: 2 }), room),
    ...(larger
      ? [
          make(
            `one larger, ${larger.id}`,
            withBank(bare, place, { fan: larger, count: 1 }),
            `a face of ${millimetres(larger.size)}`,
          ),
        ]
      : []),
  ];
}

/**
 * The same place with one of several fans.
 *
 * @param start scenario and build
 * @param place where the fans stand by turns
 * @param fans to compare
 * @param count of them side by side [-]
 */
export function fanVariants(
  start: StartBuild,
  place: number,
  fans: readonly FanModel[],
  count: number,
): readonly Variant[] {
  return fans.map((fan) => ({
    name: `${fan.id} x${count}`,
    ...withBank(start, place, { fan, count }),
    stack: [place],
    needs: '',
  }));
}

/** Builds that the scenario names, each with its lost fans. */
export function namedVariants(
  enclosure: Enclosure,
  builds: readonly NamedBuild[],
  place: number,
): readonly Variant[] {
  return builds.map(({ id, options, lost = [] }) => ({
    name: id,
    enclosure: withLostFans(enclosure, options, lost),
    build: options,
    stack:
      enclosure.legs
        .find((leg) => leg.through.includes(place))
        ?.through.filter((index) => enclosure.places[index]?.kind === 'bank') ?? [],
    needs: '',
  }));
}
