import type { Build, Enclosure, LostThere } from '../enclosure/enclosure.ts';
import { withLostFans } from '../enclosure/lost-fans.ts';
import { assemble, type Machine, plantOf } from '../enclosure/machine.ts';
import type { Problem } from '../reading/problem.ts';
import { readVariant, type ScenarioSource } from '../reading/variants/scenario-source.ts';
import type { SpeedPlan } from './build-state.ts';
import type { Change, NoChange, Quantity } from './quantity.ts';
import { sameBuild } from './same-build.ts';

/** A scenario, what it is read from, and one build of it. */
export interface ScenarioBuild {
  readonly source: ScenarioSource;
  readonly enclosure: Enclosure;
  readonly build: Build;
  readonly lost?: readonly LostThere[] | undefined;
}

/** The scenario with some quantities changed. */
export interface VariedScenario {
  readonly enclosure: Enclosure;
  /** Speeds that the changes ask for, over those of a plan. */
  readonly speeds: readonly Extract<Change, { kind: 'speed' }>[];
}

/** A problem of a varied scenario, in one line: where, what, found and expected. */
export function problemLine({ path, message, found, expected }: Problem): string {
  const where = path.length > 0 ? `${path.join('.')}: ` : '';
  const what = found === undefined ? '' : `, found ${found}`;
  return `${where}${message}${what}${expected === undefined ? '' : `, expected ${expected}`}`;
}

function changedOnTop(enclosure: Enclosure, change: Change): Enclosure {
  switch (change.kind) {
    case 'heat': {
      const { factor } = change;
      const duties = enclosure.duties.map((duty) => ({
        ...duty,
        heat: duty.heat.map((share) => share * factor),
      }));
      return { ...enclosure, duties };
    }
    case 'room':
      return { ...enclosure, duties: enclosure.duties.map((duty) => ({ ...duty, room: change.room })) };
    default:
      return enclosure;
  }
}

/**
 * A scenario with one duty only, which then takes all of the time.
 *
 * @param enclosure the scenario
 * @param duty to keep; all if absent or unknown
 */
export function onlyDuty(enclosure: Enclosure, duty: string | undefined): Enclosure {
  const kept = enclosure.duties.filter(({ id }) => id === duty);
  return kept.length === 0
    ? enclosure
    : { ...enclosure, duties: kept.map((each) => ({ ...each, share: 1 })) };
}

/**
 * The scenario with changes: values of the file are read again by the usual readers, heat, room and speeds are set on
 * top.
 *
 * @param base the scenario as it is
 * @param changes applied together
 * @returns the scenario, or why it cannot be
 */
export function variedScenario(
  base: { readonly source: ScenarioSource; readonly enclosure: Enclosure },
  changes: readonly (Change | NoChange)[],
): VariedScenario | string {
  const misfit = changes.find((change) => change.kind === 'misfit');
  if (misfit) return misfit.reason;
  const applied = changes.filter((change) => change.kind !== 'misfit');
  const settings = applied.flatMap((change) => (change.kind === 'settings' ? change.settings : []));
  const read = settings.length > 0 ? readVariant(base.source, settings) : undefined;
  if (read && !read.ok) {
    const [first] = read.problems;
    return first ? problemLine(first) : 'the scenario cannot be read';
  }
  return {
    enclosure: applied.reduce(changedOnTop, read?.ok ? read.enclosure : base.enclosure),
    speeds: applied.filter((change) => change.kind === 'speed'),
  };
}

/**
 * A build of a varied scenario made ready, fans lost as before.
 *
 * @param base scenario and build as they are
 * @param varied the scenario as it is now
 * @param frees fields whose values no longer tell options apart
 * @returns the machine, or why the build is no longer possible
 */
export function variedMachine(
  base: ScenarioBuild,
  { enclosure }: VariedScenario,
  frees: Quantity['frees'],
): Machine | string {
  const build = sameBuild(base.enclosure, base.build, enclosure, frees);
  if (typeof build === 'string') return build;
  return assemble(plantOf(withLostFans(enclosure, build, base.lost ?? [])), build);
}

/**
 * A plan with the speeds that changes ask for in the place of its own; a bank never runs faster than full speed.
 *
 * @param plan of the banks nobody asks anything of
 * @param speeds asked for
 */
export function withSpeeds(plan: SpeedPlan, speeds: VariedScenario['speeds']): SpeedPlan {
  if (speeds.length === 0) return plan;
  return (machine, duty, index) => {
    const own = speeds.some(({ place }) => place === undefined)
      ? machine.banks.map(() => 1)
      : plan(machine, duty, index);
    return machine.banks.map(({ place, bank }, at) => {
      const id = machine.plant.enclosure.places[place]?.id;
      const asked = speeds.findLast((speed) => speed.place === undefined || speed.place === id);
      if (!asked) return own[at] ?? 1;
      return Math.min(1, asked.of === 'full' ? asked.speed : asked.speed / bank.fan.fullSpeed);
    });
  };
}
