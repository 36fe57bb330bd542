import type { Fraction, KelvinsPerWatt } from '../quantities/dimensions.ts';
import type { HeatPipes } from './heat-pipes.ts';
import { type Paste, pasteResistance } from './paste.ts';
import { type BasePlate, spreading } from './spreading.ts';

/** What the heat of a part passes on its way to the fins, or to the air of its chamber. */
export interface HeatPath {
  /** All that is not named below, flow-independent [K/W]: joints, the inside of the part, or part to chamber air. */
  readonly resistance: KelvinsPerWatt;
  readonly pipes?: HeatPipes;
  readonly base?: BasePlate;
  readonly paste?: Paste;
}

/** One step of a path. */
export interface PathStep {
  readonly label: string;
  /** [K/W] */
  readonly resistance: KelvinsPerWatt;
}

/** The steps that have a name, from the fins to the part. */
function namedSteps({ pipes, base, paste }: HeatPath, fins: KelvinsPerWatt): readonly PathStep[] {
  const steps: PathStep[] = [];
  if (pipes) steps.push({ label: 'heat pipes', resistance: pipes.resistance });
  if (base) {
    const { max, through } = spreading(base, fins + (pipes?.resistance ?? 0));
    steps.push({ label: 'spreading in the base', resistance: max });
    steps.push({ label: 'through the base', resistance: through });
  }
  if (paste) steps.push({ label: 'paste', resistance: pasteResistance(paste) });
  return steps;
}

/**
 * The steps of a path, from the fins (or the chamber air) to the part: heat pipes, spreading, the base itself, paste,
 * and the rest under the label given.
 *
 * Source: resistances in series; each as its own function says.
 *
 * @param path of the part
 * @param fins resistance of the fins at the present flow [K/W], finite, ≥ 0; a base spreads against it and the pipes
 * @param rest label of what has no name of its own
 */
export function pathSteps(path: HeatPath, fins: KelvinsPerWatt, rest: string): readonly PathStep[] {
  return [...namedSteps(path, fins), { label: rest, resistance: path.resistance }];
}

/**
 * Resistance from the fins (or the chamber air) to a part [K/W]. It does not fall as that of the fins rises, so that it
 * is least with fins of none.
 *
 * Source: resistances in series.
 *
 * @param path of the part
 * @param fins resistance of the fins at the present flow [K/W], finite, ≥ 0
 */
export function pathResistance(path: HeatPath, fins: KelvinsPerWatt): KelvinsPerWatt {
  if (!path.pipes && !path.base && !path.paste) return path.resistance;
  return namedSteps(path, fins).reduce((sum, step) => sum + step.resistance, path.resistance);
}

/**
 * Resistance from the fins to a probe in the base [K/W]: heat pipes and a share of the base.
 *
 * Source: resistances in series; the share is the user's knowledge of where the probe sits.
 *
 * @param path of the part
 * @param fins resistance of the fins at the present flow [K/W], finite, ≥ 0
 * @param share of the base's resistance that the probe sees [-]: 1 right under the part, 0 at the fins
 */
export function probeResistance(path: HeatPath, fins: KelvinsPerWatt, share: Fraction): KelvinsPerWatt {
  const pipes = path.pipes?.resistance ?? 0;
  if (!path.base) return pipes;
  const { max, through } = spreading(path.base, fins + pipes);
  return pipes + share * (max + through);
}
