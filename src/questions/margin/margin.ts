import type { LostThere } from '../../enclosure/enclosure.ts';
import type { Fraction, KelvinDifference, Kelvins, Metres, Pascals } from '../../quantities/dimensions.ts';
import { writtenTree } from '../../reading/variants/scenario-source.ts';
import { quietestPlan } from '../build-state.ts';
import type { OperatingState } from '../operating-state.ts';
import type { ScenarioBuild } from '../varied-scenario.ts';
import { backFlow } from './back-flow.ts';
import { type CellSureness, cellSureness } from './cell-sureness.ts';
import { hasFilters } from './dust.ts';
import { dutyIndex, type Ground, groundOf, losses, machineFor } from './ground.ts';
import { type HeldRoom, type Rescue, rescue, roomHeld, stateAt } from './rescue.ts';

/** What a build is tried under; every combination is a cell. */
export interface MarginOptions {
  /** Room temperatures [K]; at least one. */
  readonly rooms: readonly Kelvins[];
  /** Altitudes [m] beside the scenario's own place. */
  readonly altitudes: readonly Metres[];
  /** Share of what a filter may hold [-], beside what the scenario says; none if it has no filter. */
  readonly dust: readonly Fraction[];
  /** Shares by which fans run slower because their supply is low [-], beside none. */
  readonly slower: readonly Fraction[];
  /** Whether one fan of each place is tried dead. */
  readonly lostFans: boolean;
  /** One share of full speed for all banks [-]; the quietest adequate speeds of the scenario if absent. */
  readonly speed?: Fraction | undefined;
  /** Name of the duty; the one with the most heat if absent. */
  readonly duty?: string | undefined;
}

/** One combination of conditions. */
export interface Conditions {
  readonly room: Kelvins;
  /** [m]; absent for the scenario's own place. */
  readonly altitude?: Metres;
  /** [Pa] */
  readonly pressure: Pascals;
  /** Share of what the filters may hold [-]; absent for what the scenario says. */
  readonly dust?: Fraction;
  /** Name of the place in which one fan is dead; absent if all turn. */
  readonly dead?: string;
  /** Share by which the fans run slower [-]. */
  readonly slower: Fraction;
}

/** What becomes of a build under some conditions. */
export interface MarginCell extends Conditions {
  /** At the speeds the build is set to; a reason where there is nothing to find. */
  readonly state: OperatingState | string;
  /** Margin of the tightest limit beyond what is asked [K]; −∞ without a solution or if a part fails. */
  readonly margin: KelvinDifference;
  /** Null without a solution, if a part fails and where nothing has a limit. */
  readonly sure: CellSureness | null;
  /** The slowest speeds that hold all limits, or what full speed lacks. */
  readonly rescue: Rescue;
  /** Air that flows back through a dead fan [m³/s]; absent if none is dead. */
  readonly back?: number;
}

/** A build under all combinations of conditions. */
export interface MarginMatrix {
  readonly duty: string;
  readonly banks: readonly { readonly place: string; readonly fan: string; readonly count: number }[];
  /** Speeds it is set to, as shares of full speed [-]. */
  readonly ratios: readonly number[];
  readonly cells: readonly MarginCell[];
  /** Index of the cell with the least margin; −1 if there are no cells. */
  readonly worst: number;
  /** Room temperature up to which the build holds as drawn, and under the other conditions of the worst cell. */
  readonly held: { readonly asDrawn: HeldRoom; readonly worst: HeldRoom };
  /** Volume that carries the same mass at each pressure, over that at sea level and the same room temperature [-]. */
  readonly flowFactors: readonly {
    readonly pressure: Pascals;
    readonly altitude?: Metres;
    readonly factor: number;
  }[];
}

/** Standard pressure at sea level [Pa]. Source: US Standard Atmosphere 1976. */
const SEA_LEVEL: Pascals = 101_325;

function cellOf(
  base: ScenarioBuild,
  ground: Ground,
  conditions: Pick<Conditions, 'room' | 'slower'> & { readonly loss: LostThere | undefined },
  set: { readonly duty: number; readonly ratios: readonly number[] },
): MarginCell {
  const machine = machineFor(base, ground, conditions.loss);
  const { room, slower, loss } = conditions;
  const dead = loss && ground.enclosure.places[loss.place]?.id;
  const context = { machine, duty: set.duty, ratios: set.ratios, room, slower };
  const state = stateAt(context, 1);
  const { margin: asked } = ground.enclosure;
  const holds = state.failure === undefined;
  return {
    room,
    pressure: ground.enclosure.site.pressure,
    ...(ground.altitude === undefined ? {} : { altitude: ground.altitude }),
    ...(ground.dust === undefined ? {} : { dust: ground.dust }),
    ...(dead === undefined ? {} : { dead }),
    slower,
    state: holds ? state : (state.failure ?? ''),
    margin: holds ? (state.tightest?.margin ?? Number.POSITIVE_INFINITY) - asked : Number.NEGATIVE_INFINITY,
    sure: holds ? cellSureness(context) : null,
    rescue: rescue(context),
    ...(loss ? { back: backFlow(machine, context, loss.place) } : {}),
  };
}

/** All cells of one ground: rooms run fastest, then a low supply, then dead fans. */
function cellsOn(
  base: ScenarioBuild,
  ground: Ground,
  { rooms, slower, lostFans }: MarginOptions,
  set: { readonly duty: number; readonly ratios: readonly number[] },
): readonly MarginCell[] {
  return losses(base, lostFans).flatMap((loss) =>
    [0, ...slower].flatMap((share) =>
      rooms.map((room) => cellOf(base, ground, { room, slower: share, loss }, set)),
    ),
  );
}

/** The build under the conditions of a cell. */
function machineIn(base: ScenarioBuild, grounds: readonly Ground[], cell: MarginCell | undefined) {
  const ground = grounds.find(({ altitude, dust }) => altitude === cell?.altitude && dust === cell?.dust);
  const loss = losses(base, true).find(
    (each) => each && cell?.dead !== undefined && base.enclosure.places[each.place]?.id === cell.dead,
  );
  return machineFor(base, ground ?? (grounds[0] as Ground), loss);
}

function factorsOf(grounds: readonly Ground[]): MarginMatrix['flowFactors'] {
  const seen = new Map(grounds.map(({ enclosure, altitude }) => [enclosure.site.pressure, altitude]));
  return [...seen].map(([pressure, altitude]) => ({
    pressure,
    ...(altitude === undefined ? {} : { altitude }),
    // The same room temperature and moisture: density goes with pressure, whatever the standard atmosphere's temperature.
    factor: SEA_LEVEL / pressure,
  }));
}

/**
 * Tries a build under every combination of room temperature, altitude, dust, a dead fan and a low supply of the fans.
 *
 * @param base scenario and build
 * @param options conditions, speeds and duty
 * @returns the matrix, or why a scenario under these conditions cannot be read
 */
export function marginMatrix(base: ScenarioBuild, options: MarginOptions): MarginMatrix | string {
  const dusts = hasFilters(writtenTree(base.source)) ? options.dust : [];
  const read = [undefined, ...options.altitudes].flatMap((altitude) =>
    [undefined, ...dusts].map((dust) => groundOf(base, altitude, dust)),
  );
  const wrong = read.find((ground) => typeof ground === 'string');
  if (typeof wrong === 'string') return wrong;
  const grounds = read.filter((ground) => typeof ground !== 'string');
  const own = grounds[0] as Ground;
  const duty = dutyIndex(base.enclosure, options.duty);
  const drawn = machineFor(base, own, undefined);
  const plan = options.speed === undefined ? quietestPlan : () => drawn.banks.map(() => options.speed ?? 1);
  const known = base.enclosure.duties[duty];
  const ratios = known ? Array.from(plan(drawn, known, duty)) : [];
  const cells = grounds.flatMap((ground) => cellsOn(base, ground, options, { duty, ratios }));
  const worst = cells.reduce(
    (best, cell, index) => (cell.margin < (cells[best]?.margin ?? Number.POSITIVE_INFINITY) ? index : best),
    -1,
  );
  const cell = cells[worst];
  return {
    duty: known?.id ?? '',
    banks: drawn.banks.map(({ place, bank }) => ({
      place: base.enclosure.places[place]?.id ?? '',
      fan: bank.fan.id,
      count: bank.count,
    })),
    ratios,
    cells,
    worst,
    held: {
      asDrawn: roomHeld({ machine: drawn, duty, ratios, slower: 0 }),
      worst: roomHeld({ machine: machineIn(base, grounds, cell), duty, ratios, slower: cell?.slower ?? 0 }),
    },
    flowFactors: factorsOf(grounds),
  };
}
