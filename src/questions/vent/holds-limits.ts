import type { Element } from '../../elements/element.ts';
import { canHold } from '../solved-change.ts';
import { machineWith } from './vent-state.ts';
import type { VentTask } from './vent-task.ts';

/**
 * Whether a build with another element in the opening's place can hold every limit in every duty, at whatever speeds.
 *
 * @param task the opening
 * @param element to stand there
 */
export function holdsLimits(task: VentTask, element: Element): boolean {
  return canHold(machineWith(task, element));
}
