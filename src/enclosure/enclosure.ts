import type { Element } from '../elements/element.ts';
import type { FanModel } from '../fan/fan-model.ts';
import type { LostFans } from '../fan/mixed-bank.ts';
import type { HeatPath } from '../heat/heat-path.ts';
import type { PanelMaterial } from '../heat/panel.ts';
import type { PowerLaw } from '../heat/part-power.ts';
import type {
  Fraction,
  KelvinDifference,
  Kelvins,
  Metres,
  Pascals,
  Watts,
} from '../quantities/dimensions.ts';
import type { Asks, Header } from './asks.ts';
import type { Assumptions } from './assumptions.ts';
import type { SpeedBand } from './avoided-speeds.ts';
import type { Hearing, Listener } from './hearing.ts';
import type { Uncertainties } from './uncertainties.ts';

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
  /** Fans that turn. */
  readonly count: number;
  /** Fans beside them that do not; none if absent. */
  readonly lost?: LostFans;
}

/** A passive element's place and what may stand there. */
export interface ElementPlace {
  readonly kind: 'element';
  readonly id: string;
  readonly options: readonly ElementOption[];
  /** How the place lies to the listener if an option makes noise; as `listener` says if absent. */
  readonly heard?: Hearing;
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
  /** Distance from the fan to a flat wall before its inlet [m], > 0; absent if there is none. */
  readonly inletWall?: Metres;
  /** Distance from the fan to a flat wall behind its outlet [m], > 0; absent if there is none. */
  readonly outletWall?: Metres;
  /** Distance from the fan to a bar, a cable or a board across a part of its inlet [m], ≥ 0; absent if there is none. */
  readonly inletBar?: Metres;
  /** Distance from the fan to a bar, a cable or a board across a part of its outlet [m], ≥ 0; absent if there is none. */
  readonly outletBar?: Metres;
  /** Bands of speed in which its fans should not run; none if absent. */
  readonly avoid?: readonly SpeedBand[];
  /** How the place lies to the listener; as `listener` says if absent. */
  readonly heard?: Hearing;
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
  /** How much higher its end lies than its start [m]: the lighter air of a leg that rises helps along; 0 if absent. */
  readonly rise?: Metres;
}

/** Where a part gives off its heat: on the fins of a place or into the air of a chamber. */
export type Seat =
  | { readonly kind: 'fins'; readonly place: number }
  | { readonly kind: 'chamber'; readonly chamber: number };

/** Highest temperature allowed to the part itself, to the air at it, or to a probe in the base under it. */
export interface Limit {
  readonly of: 'part' | 'air' | 'probe';
  readonly temperature: Kelvins;
}

/** What a temperature that has a limit is of: as asked, of a part whose heat pipes dry out above it, or of a panel. */
export type LimitKind = Limit['of'] | 'pipes' | 'panel';

/** What a supply was seen to give. */
export interface SupplyReading {
  /** Direct current at full heat [W]. */
  readonly output: Watts;
  /** What it may give for a short time [W]; absent if nobody said. */
  readonly rating?: Watts;
}

/** Something that makes heat: how much, where, and what the heat passes on its way to the fins or the air. */
export interface Part extends PowerLaw, HeatPath {
  readonly id: string;
  /** Only a supply may sit outside. */
  readonly seat: Seat;
  readonly limits: readonly Limit[];
  /** Share of the base's resistance that a probe in it sees [-]; 1 if absent. */
  readonly probe?: Fraction;
  /** Only of the part that feeds the others. */
  readonly supply?: SupplyReading;
}

/** The outer wall of a chamber, as far as heat passes it. */
export interface Skin {
  readonly chamber: number;
  /** From the air of the chamber to the room [W/K], ≥ 0. */
  readonly conductance: number;
  /** Share of that temperature drop that lies outside the panel [-]. */
  readonly share: Fraction;
  /** What people touch; absent if nobody does. */
  readonly material?: PanelMaterial;
  /** Highest temperature of the panel [K]; none if absent. */
  readonly limit?: Kelvins;
}

/** A state of use. */
export interface Duty {
  readonly id: string;
  /** Share of the time [-]; all shares sum to 1. A duty of share 0 must still be survived. */
  readonly share: Fraction;
  /** Factor on each part's power, order of `parts` [-]. */
  readonly heat: readonly Fraction[];
  readonly room: Kelvins;
  /** Kelvins by which the limits of each part are lower in this duty, order of `parts`; none if absent. */
  readonly lowered?: readonly (readonly KelvinDifference[])[];
}

/** Fans of one place that do not turn. */
export interface LostThere extends LostFans {
  readonly place: number;
}

/** A build the user gave a name to: one option index per place. */
export interface NamedBuild {
  readonly id: string;
  readonly options: Build;
  /** Fans that do not turn, by place; solve the build in the enclosure that `withLostFans` makes. */
  readonly lost?: readonly LostThere[];
}

/** One assignment of all choices: for each place the index of the option that stands there. */
export type Build = readonly number[];

/** What exists, what may vary and what is asked: the whole scenario in SI. */
export interface Enclosure {
  readonly title: string;
  readonly site: { readonly pressure: Pascals; readonly relativeHumidity: Fraction };
  readonly listener: Listener;
  /** Names; index 0 is `outside`. */
  readonly chambers: readonly string[];
  readonly places: readonly Place[];
  readonly legs: readonly Leg[];
  readonly parts: readonly Part[];
  /** Chambers whose outer wall lets heat through; none if absent. */
  readonly skins?: readonly Skin[];
  readonly duties: readonly Duty[];
  readonly builds: readonly NamedBuild[];
  /** Least margin asked of every limit [K], ≥ 0. */
  readonly margin: number;
  /** What is asked of builds beside their limits; nothing if absent. */
  readonly asks?: Asks;
  /** Banks that are fed together; each by itself if absent. */
  readonly headers?: readonly Header[];
  readonly assumptions: Assumptions;
  /** How far off the figures may be; the usual uncertainties if absent. */
  readonly uncertainties?: Uncertainties;
}
