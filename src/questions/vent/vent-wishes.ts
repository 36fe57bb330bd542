import type { Field } from '../../elements/hole-pattern.ts';
import type { PerforatedSheet } from '../../elements/perforated-sheet.ts';
import type { Build, Duty, Enclosure } from '../../enclosure/enclosure.ts';
import type { Fraction, Metres } from '../../quantities/dimensions.ts';
import { nearestName } from '../../quantities/nearest.ts';
import { bladeDistance } from '../blade-distance.ts';
import { type SolvedChange, solveAnew } from '../solved-change.ts';
import { leastWeb, type Process } from './sheet-rules.ts';
import type { Aim, VentTask } from './vent-task.ts';

/** What somebody wants of an opening, as far as it is said; lengths in SI. */
export interface VentWishes {
  /** Name of the element; the only perforated sheet if absent. */
  readonly opening: string | undefined;
  /** Name of the duty; the loudest that lasts if absent. */
  readonly duty: string | undefined;
  /** One speed for all banks [%]; the quietest that hold the limits now if absent. */
  readonly speed: number | undefined;
  readonly aim: Aim;
  /** [-] */
  readonly keep: Fraction | undefined;
  readonly field: Field | undefined;
  /** Thickness [m]. */
  readonly sheet: Metres | undefined;
  readonly process: Process;
  /** The only size of holes [m]. */
  readonly hole: Metres | undefined;
  /** Narrowest web [m]. */
  readonly web: Metres | undefined;
  /** Distance to the blades [m]. */
  readonly blades: Metres | undefined;
}

/** Share of the flow that is kept if nobody says [-] (assumption). */
const USUAL_KEEP: Fraction = 0.95;
/** Distance to blades that is reckoned with where neither the user nor the drawing tells one [m] (assumption). */
const USUAL_BLADES: Metres = 0.005;
/** Holes and webs of an opening that is no perforated sheet yet, to begin with [m]; they do not come into any answer. */
const UNKNOWN_HOLE: Metres = 0.004;

function sheetAt(enclosure: Enclosure, build: Build, index: number): PerforatedSheet | undefined {
  const place = enclosure.places[index];
  return place?.kind === 'element' ? place.options[build[index] ?? 0]?.element.sheet : undefined;
}

/** Index of the opening, or why it is none. */
function openingOf(enclosure: Enclosure, build: Build, name: string | undefined): number | string {
  const { places, legs } = enclosure;
  const passed = legs.flatMap(({ through }) => through);
  const elements = places.flatMap(({ kind, id }, index) =>
    kind === 'element' && passed.includes(index) ? [{ id, index }] : [],
  );
  const sheets = elements.filter(({ index }) => sheetAt(enclosure, build, index));
  const [only] = sheets;
  if (name === undefined) {
    if (only && sheets.length === 1) return only.index;
    const names = (sheets.length > 0 ? sheets : elements).map(({ id }) => id).join(', ');
    return sheets.length > 1
      ? `which opening? Give --opening one of ${names}`
      : `no perforated sheet is passed; give --opening one of ${names}`;
  }
  const found = elements.find(({ id }) => id === name);
  if (found) return found.index;
  const names = elements.map(({ id }) => id);
  const close = nearestName(name, names);
  return `no air passes an element "${name}"${close ? `; did you mean "${close}"?` : `; there are: ${names.join(', ')}`}`;
}

/** The sheet to cut, or what is missing to know it. */
function sheetOf(
  now: PerforatedSheet | undefined,
  wishes: VentWishes,
  name: string,
): PerforatedSheet | string {
  const field = wishes.field ?? now?.perforated;
  const thickness = wishes.sheet ?? now?.sheet;
  if (!field || thickness === undefined) return `"${name}" is no perforated sheet: give --field and --sheet`;
  const base = now ?? {
    hole: UNKNOWN_HOLE,
    web: UNKNOWN_HOLE,
    shape: 'round' as const,
    pattern: 'staggered' as const,
    facing: 'vent' as const,
  };
  return { ...base, perforated: field, sheet: thickness };
}

/** The loudest duty that lasts, or the first. */
function loudest({ duties }: SolvedChange): Duty | undefined {
  const lasting = duties.filter(({ duty }) => duty.share > 0);
  return [...lasting].sort((one, other) => other.point.energy - one.point.energy)[0]?.duty ?? duties[0]?.duty;
}

/**
 * An opening to find a pattern for, from what is wished and what the scenario tells; the fans run at the quietest speeds
 * that hold the limits with the opening as it is, or at the coolest if none do, or at the speed that is wished.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param wishes as far as they are said
 * @returns the task, or why there is none, in words
 */
export function ventTask(enclosure: Enclosure, build: Build, wishes: VentWishes): VentTask | string {
  const place = openingOf(enclosure, build, wishes.opening);
  if (typeof place === 'string') return place;
  const now = sheetAt(enclosure, build, place);
  const sheet = sheetOf(now, wishes, enclosure.places[place]?.id ?? '');
  if (typeof sheet === 'string') return sheet;
  const solved = solveAnew(enclosure, build);
  const duty = enclosure.duties.find(({ id }) => id === wishes.duty) ?? loudest(solved);
  if (!duty) return 'the scenario has no duty';
  return {
    enclosure,
    build,
    place,
    speeds: solved.duties.map(({ point: { ratios } }) =>
      wishes.speed === undefined ? ratios : ratios.map(() => (wishes.speed ?? 0) / 100),
    ),
    duty,
    sheet,
    stands: now !== undefined && wishes.field === undefined && wishes.sheet === undefined,
    process: wishes.process,
    leastWeb: wishes.web ?? leastWeb(wishes.process, sheet.sheet),
    ...(wishes.hole === undefined ? {} : { hole: wishes.hole }),
    blades: wishes.blades ?? bladeDistance(enclosure, build, place) ?? USUAL_BLADES,
    keep: wishes.keep ?? USUAL_KEEP,
    aim: wishes.aim,
  };
}
