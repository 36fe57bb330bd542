import { ASSUMPTIONS } from '../../src/enclosure/assumptions.ts';
import type { Duty, Enclosure, Limit, Part, Seat } from '../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { createPass } from '../../src/enclosure/pass.ts';
import { conditionsOf, newPassState } from '../../src/enclosure/pass-state.ts';
import { buildsOf } from './builds.ts';
import { type Random, seeded } from './random.ts';
import { type Airway, randomAirway } from './random-airway.ts';

/** How large a random enclosure may get. */
export interface Size {
  /** Places for fans, 1 to 3. */
  readonly banks: number;
  readonly mostBuilds: number;
  readonly mostDuties: number;
  /** Only one chamber, with fans in one leg into it and one out of it at most. */
  readonly simple?: boolean;
}

/** Builds and speeds looked at to set the limits. */
const SAMPLED_BUILDS = 16;
const SAMPLED_SPEEDS = 8;
/** A limit is never further above the room than this [K]. */
const MOST_RISE = 150;
const NO_LIMIT = Number.POSITIVE_INFINITY;

function seatsOf(random: Random, airway: Airway): readonly Seat[] {
  const seats: Seat[] = [];
  airway.places.forEach((place, index) => {
    const onFins = place.kind === 'element' && place.options[0]?.element.finResistance !== undefined;
    if (onFins && random.chance(0.85)) seats.push({ kind: 'fins', place: index });
    if (onFins && random.chance(0.15)) seats.push({ kind: 'fins', place: index });
  });
  airway.chambers.forEach((_, chamber) => {
    if (chamber > 0 && random.chance(0.4)) seats.push({ kind: 'chamber', chamber });
  });
  return seats.length > 0 ? seats : [{ kind: 'chamber', chamber: 1 }];
}

/** Parts with limits still to be set: first which temperatures are limited. */
function partsOf(random: Random, seats: readonly Seat[]): readonly Part[] {
  const obliged = random.whole(0, seats.length - 1);
  return seats.map((seat, index): Part => {
    const kinds: Limit['of'][] = [];
    const mostly = seat.kind === 'fins' ? 'part' : random.pick(['air', 'part'] as const);
    if (index === obliged || random.chance(0.8)) kinds.push(mostly);
    if (kinds.length > 0 && random.chance(0.1)) kinds.push(mostly === 'air' ? 'part' : 'air');
    return {
      id: `part-${index + 1}`,
      power: seat.kind === 'fins' ? random.spread(8, 90) : random.spread(3, 30),
      slope: random.pick([0, 0, 0.004, 0.006, -0.002]),
      powerAt: 323.15,
      seat,
      resistance: random.between(0, seat.kind === 'fins' ? 0.3 : 1.5),
      limits: kinds.map((of) => ({ of, temperature: NO_LIMIT })),
    };
  });
}

function dutiesOf(random: Random, parts: readonly Part[], most: number): readonly Duty[] {
  const count = random.whole(1, most);
  const restless = count > 1 && random.chance(0.6) ? 0 : -1;
  const weights = Array.from({ length: count }, (_, index) =>
    index === restless ? 0 : random.between(0.1, 1),
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const hottest = 273.15 + random.between(24, 38);
  const duties = weights.map((weight, index): Duty => {
    const heat = parts.map(() => (index === 0 ? 1 : random.between(0.2, 1)));
    const room = index === 0 ? hottest : hottest - random.between(0, 12);
    return { id: `duty-${index + 1}`, share: weight / total, heat, room };
  });
  return random.chance(0.5) ? duties.toReversed() : duties;
}

/** Temperatures of all limits in the hottest duty: builds, then speeds, then limits [K]. */
function sampled(random: Random, enclosure: Enclosure): readonly (readonly (readonly number[])[])[] {
  const plant = plantOf(enclosure);
  const hottest = enclosure.duties.find((duty) => duty.heat.every((factor) => factor === 1));
  const all = buildsOf(enclosure);
  const stride = Math.max(1, Math.ceil(all.length / SAMPLED_BUILDS));
  return all
    .filter((_, index) => index % stride === 0)
    .map((build) => {
      const machine = assemble(plant, build);
      const pass = createPass(machine);
      const state = newPassState(machine);
      return Array.from({ length: SAMPLED_SPEEDS }, (_, trial) => {
        const ratios = Float64Array.from(machine.banks, ({ bank }) => {
          const drawn = bank.fan.holdFloor ** random.unit();
          return trial === 0 ? 1 : drawn;
        });
        if (!hottest || pass(conditionsOf(enclosure, hottest), ratios, state, 1e-4)) return [NO_LIMIT];
        return enclosure.parts.flatMap((part, index) =>
          part.limits.map(
            ({ of }) => (of === 'part' ? state.partTemperatures[index] : state.partAir[index]) ?? 0,
          ),
        );
      });
    });
}

/**
 * Sets the limits so that about the wanted share of the sampled builds can hold them all at some sampled speeds:
 * each limit starts at the coolest temperature met and is raised in step with the others.
 */
function limitsFor(random: Random, enclosure: Enclosure): readonly number[] {
  const builds = sampled(random, enclosure);
  const wanted = random.between(0.15, 0.75);
  const room = Math.max(...enclosure.duties.map((duty) => duty.room));
  const points = builds.flat();
  const count = enclosure.parts.reduce((sum, part) => sum + part.limits.length, 0);
  const limits = Array.from({ length: count }, (_, limit) => {
    const found = points.map((point) => point[limit] ?? NO_LIMIT).sort((a, b) => a - b);
    const coolest = Math.min(found[0] ?? NO_LIMIT, room + MOST_RISE);
    const middle = Math.min(found[found.length >> 1] ?? NO_LIMIT, room + MOST_RISE);
    return { coolest, reach: (Math.max(0, middle - coolest) + 0.5) * random.between(0.5, 1.5) };
  });
  const at = (step: number) => limits.map(({ coolest, reach }) => coolest + (step / 40) * reach);
  const holding = (bounds: readonly number[]) =>
    builds.filter((speeds) =>
      speeds.some((point) => bounds.every((bound, limit) => (point[limit] ?? NO_LIMIT) <= bound)),
    );
  let step = 1;
  while (step < 400 && holding(at(step)).length < wanted * builds.length) step += 1;
  return at(step + random.between(0, 6)).map((limit) => Math.min(limit, room + MOST_RISE) + enclosure.margin);
}

function withLimits(enclosure: Enclosure, limits: readonly number[]): Enclosure {
  let next = 0;
  const parts = enclosure.parts.map((part) => ({
    ...part,
    limits: part.limits.map(({ of }): Limit => ({ of, temperature: limits[next++] as number })),
  }));
  return { ...enclosure, parts };
}

/**
 * A small random enclosure, of which roughly 60 % of the builds are adequate.
 *
 * @param seed the same seed and size give the same enclosure
 * @param size how large it may get
 */
export function randomEnclosure(seed: number, size: Size): Enclosure {
  const random = seeded(seed);
  const airway = randomAirway(random, size.banks, size.mostBuilds, size.simple ?? false);
  const parts = partsOf(random, seatsOf(random, airway));
  const enclosure: Enclosure = {
    title: `random enclosure ${seed}`,
    site: { pressure: random.between(80_000, 103_000), relativeHumidity: random.between(0.2, 0.8) },
    listener: { distance: random.between(0.5, 2) },
    ...airway,
    parts,
    duties: dutiesOf(random, parts, size.mostDuties),
    builds: [],
    margin: random.chance(0.3) ? random.between(0, 4) : 0,
    assumptions: ASSUMPTIONS,
  };
  return withLimits(enclosure, limitsFor(random, enclosure));
}
