import type { SeriesLeg } from '../../airway/series.ts';
import type { Element } from '../../elements/element.ts';
import { faintPart } from '../../elements/velocity-head-loss.ts';
import { askedLimits } from '../../enclosure/asked-limits.ts';
import { assemble, type Machine, plantOf } from '../../enclosure/machine.ts';
import { levelOfEnergy, newNoiseState, soundEnergy } from '../../enclosure/noise.ts';
import { createPass } from '../../enclosure/pass.ts';
import { conditionsOf, newPassState, type PassState } from '../../enclosure/pass-state.ts';
import type {
  CubicMetresPerSecond,
  Decibels,
  KelvinDifference,
  Kelvins,
  SquareMetres,
} from '../../quantities/dimensions.ts';
import { withElement } from '../levers/with-occupant.ts';
import type { VentTask } from './vent-task.ts';

/** Accuracy of the temperatures [K]. */
const TOLERANCE: KelvinDifference = 1e-7;
/** Face of an opening that loses next to nothing [m²]: its loss is linear and a thousandth of a velocity head. */
const WIDE: SquareMetres = 1;

/** What an opening does to a box whose fans run at given speeds. */
export interface VentState {
  /** Through the opening, at its own density, whichever way [m³/s]. */
  readonly flow: CubicMetresPerSecond;
  /** Temperature that is nearest to its limit, or furthest over it [K]; absent if nothing has a limit. */
  readonly temperature?: Kelvins;
  /** How far it stays below, what is asked beyond included [K]. */
  readonly margin?: KelvinDifference;
  /** Whose temperature it is. */
  readonly subject?: string;
  /** At the listener, of the whole box and of the opening alone [dB]. */
  readonly level: Decibels;
  readonly openingLevel: Decibels;
}

function flowIn(machine: Machine, place: number, state: PassState): CubicMetresPerSecond {
  const leg = machine.plant.enclosure.legs.findIndex(({ through }) => through.includes(place));
  const stage = machine.plant.enclosure.legs[leg]?.through.indexOf(place) ?? -1;
  const density = (machine.legs[leg] as SeriesLeg).densities[stage] as number;
  return Math.abs((state.network.flows[leg] as number) / density);
}

function tightest(task: VentTask, machine: Machine, state: PassState) {
  let least: { readonly margin: number; readonly temperature: number; readonly subject: string } | undefined;
  for (const { subject, limit, found } of askedLimits(machine, task.duty)) {
    const temperature = found(state);
    const margin = limit - temperature - task.enclosure.margin;
    if (!least || margin < least.margin) least = { margin, temperature, subject };
  }
  return least ?? {};
}

/** The build with another element in the opening's place. */
export function machineWith(task: VentTask, element: Element): Machine {
  const { enclosure, build } = withElement(task.enclosure, task.build, task.place, element);
  return assemble(plantOf(enclosure), build);
}

/** Speeds of the banks in the duty that is looked at [-]. */
export function speedsOf({ enclosure, duty, speeds }: VentTask): Float64Array {
  return speeds[enclosure.duties.indexOf(duty)] ?? new Float64Array(0);
}

/**
 * What comes of an element in the opening's place, the fans at the speeds of the task.
 *
 * @param task the opening
 * @param element to stand there
 * @returns undefined if air and heat have no solution
 */
export function ventState(task: VentTask, element: Element): VentState | undefined {
  const machine = machineWith(task, element);
  const state = newPassState(machine);
  const speeds = speedsOf(task);
  if (createPass(machine)(conditionsOf(task.enclosure, task.duty), speeds, state, TOLERANCE))
    return undefined;
  const noise = newNoiseState(machine);
  const level = levelOfEnergy(soundEnergy(machine, speeds, state, noise));
  const vent = machine.vents.findIndex(({ place }) => place === task.place);
  const { distance } = task.enclosure.listener;
  return {
    flow: flowIn(machine, task.place, state),
    ...tightest(task, machine, state),
    level,
    openingLevel: levelOfEnergy(vent < 0 ? 0 : (noise.vents[vent] as number) / distance ** 2),
  };
}

/**
 * The same with nothing in the way at all.
 *
 * @param task the opening
 */
export function openState(task: VentTask): VentState | undefined {
  const nothing: Element = {
    viscous: 0,
    inertial: 0,
    faint: faintPart(1, WIDE),
    lossUncertainty: 0,
    remarks: [],
  };
  return ventState(task, nothing);
}
