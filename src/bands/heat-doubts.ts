import type { Enclosure, Part } from '../enclosure/enclosure.ts';
import type { Machine } from '../enclosure/machine.ts';
import { type Stated, statedFor, type Uncertainties } from '../enclosure/uncertainties.ts';
import { createMixer } from '../heat/mixing.ts';
import { type Doubt, factorOf } from './doubt.ts';

/** The same machine in an enclosure of which something is different. */
function within(machine: Machine, change: Partial<Enclosure>): Machine {
  return { ...machine, plant: { ...machine.plant, enclosure: { ...machine.plant.enclosure, ...change } } };
}

/** The same machine with a mixer for what is different. */
function remixed(machine: Machine, change: Partial<Enclosure>): Machine {
  const moved = within(machine, change);
  const { enclosure, topology } = moved.plant;
  const mix = createMixer({
    ...topology,
    recirculation: enclosure.legs.map((leg) => leg.recirculation),
    conductances: enclosure.chambers.map((_, chamber) =>
      (enclosure.skins ?? []).reduce(
        (sum, skin) => sum + (skin.chamber === chamber ? skin.conductance : 0),
        0,
      ),
    ),
  });
  return { ...moved, plant: { ...moved.plant, mix } };
}

function partDoubt(
  key: string,
  index: number,
  share: number,
  change: (part: Part, factor: number) => Part,
): Doubt {
  return {
    key,
    moved: ({ machine, duty }, amount) => {
      const { parts } = machine.plant.enclosure;
      const part = parts[index] as Part;
      return {
        machine: within(machine, { parts: parts.with(index, change(part, factorOf(share, amount))) }),
        duty,
      };
    },
  };
}

/** What may be off about the path of a part's heat. */
const pathChanges: readonly {
  readonly sort: 'fixed' | 'paste' | 'base' | 'pipes';
  readonly has: (part: Part) => boolean;
  readonly change: (part: Part, factor: number) => Part;
}[] = [
  {
    sort: 'fixed',
    has: ({ resistance }) => resistance > 0,
    change: (part, factor) => ({ ...part, resistance: part.resistance * factor }),
  },
  {
    sort: 'paste',
    has: ({ paste }) => paste !== undefined,
    change: (part, factor) =>
      part.paste
        ? { ...part, paste: { ...part.paste, conductivity: part.paste.conductivity / factor } }
        : part,
  },
  {
    sort: 'base',
    has: ({ base }) => base !== undefined,
    change: (part, factor) =>
      part.base ? { ...part, base: { ...part.base, conductivity: part.base.conductivity / factor } } : part,
  },
  {
    sort: 'pipes',
    has: ({ pipes }) => pipes !== undefined,
    change: (part, factor) =>
      part.pipes ? { ...part, pipes: { ...part.pipes, resistance: part.pipes.resistance * factor } } : part,
  },
];

function heated(part: Part, factor: number): Part {
  const { leakage } = part;
  return {
    ...part,
    power: part.power * factor,
    ...(leakage ? { leakage: { ...leakage, power: leakage.power * factor } } : {}),
  };
}

/**
 * What may be off about heat: the room, what parts give off and what their heat passes, walls, and exhaust drawn in
 * again.
 *
 * @param machine the build
 * @param sizes how far off each may be
 */
export function heatDoubts({ plant }: Machine, sizes: Uncertainties): readonly Doubt[] {
  const { parts, skins = [], legs, chambers } = plant.enclosure;
  const room: Doubt = {
    key: 'room',
    moved: ({ machine, duty }, amount) => ({
      machine,
      duty: { ...duty, room: duty.room + amount * sizes.room },
    }),
  };
  return [
    room,
    ...parts.flatMap((part, index) => [
      partDoubt(`heat of ${part.id}`, index, statedFor(sizes.heat, part.id), heated),
      ...pathChanges
        .filter(({ has }) => has(part))
        .map(({ sort, change }) =>
          partDoubt(`${sort} of ${part.id}`, index, statedFor(sizes[sort], part.id), change),
        ),
    ]),
    ...skins.map((skin, index) => skinDoubt(chambers[skin.chamber] ?? '', index, sizes.skin)),
    ...legs.flatMap((leg, index) =>
      leg.recirculation > 0 ? [drawnInDoubt(leg.id, index, sizes.recirculation)] : [],
    ),
  ];
}

function skinDoubt(chamber: string, index: number, stated: Stated): Doubt {
  const share = statedFor(stated, chamber);
  return {
    key: `skin of ${chamber}`,
    moved: ({ machine, duty }, amount) => {
      const skins = (machine.plant.enclosure.skins ?? []).map((skin, at) =>
        at === index ? { ...skin, conductance: skin.conductance * factorOf(share, amount) } : skin,
      );
      return { machine: remixed(machine, { skins }), duty };
    },
  };
}

/** Highest share of the exhaust that is ever drawn in again [-]: all of it would never let go of heat. */
const MOST_DRAWN_IN = 0.95;

function drawnInDoubt(id: string, index: number, stated: Stated): Doubt {
  const share = statedFor(stated, id);
  return {
    key: `recirculation of ${id}`,
    moved: ({ machine, duty }, amount) => {
      const legs = machine.plant.enclosure.legs.map((leg, at) => {
        if (at !== index) return leg;
        const drawnIn = leg.recirculation * factorOf(share, amount);
        return { ...leg, recirculation: Math.min(drawnIn, Math.max(MOST_DRAWN_IN, leg.recirculation)) };
      });
      return { machine: remixed(machine, { legs }), duty };
    },
  };
}
