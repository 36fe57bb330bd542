import type { Element } from '../elements/element.ts';
import type { FanModel } from '../fan/fan-model.ts';
import type {
  Decibels,
  Fraction,
  Kelvins,
  KelvinsPerWatt,
  Metres,
  Pascals,
  PerKelvin,
  Watts,
} from '../quantities/dimensions.ts';
import type { Assumptions } from './assumptions.ts';
import type { SpeedBand } from './avoided-speeds.ts';

/** Chamber 0 is always the room around the box. */
export const OUTSIDE = 0;

/** One thing that may stand in an element's place. */
export interface ElementOption {
  /** Tells this option from its siblings, for example "hole 5 mm"; empty if there is no choice. */
  readonly label: string;
  readonly element: Element;
}

/** Fans side by side, all of one model and at one speed; `null` stands for an empty place. */
export interface Bank {
  readonly fan: FanModel;
  readonly count: number;
}

/** A passive element's place and what may stand there. */
export interface ElementPlace {
  readonly kind: 'element';
  readonly id: string;
  readonly options: readonly ElementOption[];
}

/** A place for fans and what may stand there. */
export interface BankPlace {
  readonly kind: 'bank';
  readonly id: string;
  readonly options: readonly (Bank | null)[];
  /** Depth of the place along the stream [m]. */
  readonly depth: Metres;
  /** Clear distance between the fan and what stands before it, on its inlet side [m]. */
  readonly inletGap: Metres;
  /** Clear distance between the fan and what it blows at [m]. */
  readonly outletGap: Metres;
  /** Bands of speed in which its fans should not run; none if absent. */
  readonly avoid?: readonly SpeedBand[];
}

export type Place = ElementPlace | BankPlace;

/** A chain of places from one chamber to another; fans blow along it. */
export interface Leg {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** Indices into `places`, in stream order. A place stands in one leg only. */
  readonly through: readonly number[];
  /** Share of the box's own exhaust in the air that enters from outside [-], 0 ≤ share < 1. */
  readonly recirculation: Fraction;
}

/** Where a part gives off its heat: on the fins of a place or into the air of a chamber. */
export type Seat =
  | { readonly kind: 'fins'; readonly place: number }
  | { readonly kind: 'chamber'; readonly chamber: number };

/** Highest temperature allowed to the part itself or to the air at it. */
export interface Limit {
  readonly of: 'part' | 'air';
  readonly temperature: Kelvins;
}

/** Something that makes heat. */
export interface Part {
  readonly id: string;
  /** Power at the reference temperature [W]. */
  readonly power: Watts;
  /** Relative rise of the power with the part's temperature [1/K]. */
  readonly slope: PerKelvin;
  /** Part temperature at which `power` holds [K]. */
  readonly powerAt: Kelvins;
  readonly seat: Seat;
  /** Flow-independent resistance from the part to the fin base or the chamber air [K/W]. */
  readonly resistance: KelvinsPerWatt;
  readonly limits: readonly Limit[];
}

/** A state of use. */
export interface Duty {
  readonly id: string;
  /** Share of the time [-]; all shares sum to 1. A duty of share 0 must still be survived. */
  readonly share: Fraction;
  /** Factor on each part's power, order of `parts` [-]. */
  readonly heat: readonly Fraction[];
  readonly room: Kelvins;
}

/** A build the user gave a name to: one option index per place. */
export interface NamedBuild {
  readonly id: string;
  readonly options: Build;
}

/** One assignment of all choices: for each place the index of the option that stands there. */
export type Build = readonly number[];

/** What exists, what may vary and what is asked: the whole scenario in SI. */
export interface Enclosure {
  readonly title: string;
  readonly site: { readonly pressure: Pascals; readonly relativeHumidity: Fraction };
  readonly listener: { readonly distance: Metres; readonly background?: Decibels };
  /** Names; index 0 is `outside`. */
  readonly chambers: readonly string[];
  readonly places: readonly Place[];
  readonly legs: readonly Leg[];
  readonly parts: readonly Part[];
  readonly duties: readonly Duty[];
  readonly builds: readonly NamedBuild[];
  /** Least margin asked of every limit [K], ≥ 0. */
  readonly margin: number;
  readonly assumptions: Assumptions;
}
