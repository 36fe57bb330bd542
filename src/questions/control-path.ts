import type { Duty } from '../enclosure/enclosure.ts';
import type { Fraction } from '../quantities/dimensions.ts';
import type { SolvedBuild } from '../search/solve-build.ts';
import type { LimitReader } from './limit-readings.ts';

/** States of use in a row, each asking no less of the fans than the one before; a place on it is a number from 0. */
export type ControlPath = readonly Duty[];

function between(low: number, high: number, share: Fraction): number {
  return low + share * (high - low);
}

function mixed(low: Duty, high: Duty, share: Fraction): Duty {
  return {
    id: `${low.id} to ${high.id}`,
    share: 0,
    heat: low.heat.map((heat, part) => between(heat, high.heat[part] ?? heat, share)),
    room: between(low.room, high.room, share),
  };
}

/**
 * The state at a place of a path: on a number its own, between two a mixture of heat and room.
 *
 * @param path at least one state
 * @param place from 0 to its last index [-]; held outside
 */
export function stateAt(path: ControlPath, place: number): Duty {
  const held = Math.min(path.length - 1, Math.max(0, place));
  const low = Math.floor(held);
  const [from, to] = [path[low], path[low + 1]];
  if (!from) throw new RangeError('a path has at least one state');
  return to && held > low ? mixed(from, to, held - low) : from;
}

/** The fastest that each bank runs in any duty [-]. */
function fastest({ machine, duties }: SolvedBuild): readonly Fraction[] {
  return machine.banks.map((_, bank) => Math.max(...duties.map(({ point }) => point.ratios[bank] as number)));
}

/**
 * The duties of a build by how warm they make it at the same speeds, coolest first, with states in between.
 *
 * @param solved a build with its quietest speeds
 * @param read of the same build
 * @param inside states between two neighbours [-], ≥ 0
 */
export function controlPath(solved: SolvedBuild, read: LimitReader, inside: number): ControlPath {
  const speeds = fastest(solved);
  const own = solved.duties
    .map(({ duty }) => {
      const readings = read(duty, speeds) ?? [];
      return { duty, over: Math.max(...readings.map(({ found, limit }) => found - limit)) };
    })
    .sort((one, other) => one.over - other.over)
    .map(({ duty }) => duty);
  return own.flatMap((duty, index) => {
    const next = own[index + 1];
    if (!next) return [duty];
    const shares = Array.from({ length: inside }, (_, step) => (step + 1) / (inside + 1));
    return [duty, ...shares.map((share) => mixed(duty, next, share))];
  });
}
