import type { Build, Enclosure } from '../../enclosure/enclosure.ts';
import type { BudgetLine, BuildOutcome } from '../../enclosure/outcome.ts';
import type { FanModel } from '../../fan/fan-model.ts';
import type { Metres } from '../../quantities/dimensions.ts';

/** A build as it stands, and what there is to change it with. */
export interface Situation {
  readonly enclosure: Enclosure;
  readonly build: Build;
  /** What comes of it at the speeds it is shown at. */
  readonly outcome: BuildOutcome;
  /** The whole catalog, also fans that do not fit their place. */
  readonly fans: readonly FanModel[];
}

/** One thing to change, as an enclosure and a build of it that can be solved. */
export interface Change {
  /** Name of the place, leg or part that is changed; "room" for the room. */
  readonly at: string;
  /** What is done there, in a few words. */
  readonly what: string;
  /** What it costs beside money and power, in sentences: dust, reach of fingers, strength. */
  readonly notes: readonly string[];
  /** Depth it needs beyond what there is [m]; absent if none. */
  readonly depth?: Metres;
  readonly enclosure: Enclosure;
  readonly build: Build;
}

/** What makes a step of a rise smaller; the room is below all steps. */
export type Easing = NonNullable<BudgetLine['eased']> | 'by a cooler room';

/** What a change takes, the least first: tape or a baffle; a saw or a screw; a fan that fits; a box with more room. */
export const EFFORTS = ['seal', 'cut', 'buy', 'make room', 'move'] as const;

/** What a change takes (assumption). */
export type Effort = (typeof EFFORTS)[number];

/** A way to make a box quieter or cooler: one file a lever, one line in `levers.ts`. */
export interface Lever {
  /** Two or three words that begin a line. */
  readonly name: string;
  /** Which steps of a rise it acts on. */
  readonly eases: Easing;
  /** Whether it is another fan: not what to begin with where little of the rise depends on flow. */
  readonly isFan: boolean;
  readonly effort: Effort;
  /**
   * What may be done.
   *
   * @param situation the build as it stands
   * @param strength 1 for a usual step, 2, 3 for larger ones [-]; a lever that knows no larger steps gives nothing
   */
  readonly changes: (situation: Situation, strength: number) => readonly Change[];
}
