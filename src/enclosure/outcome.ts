import type { CurveShape } from '../fan/curve-shape.ts';
import type { LostFans } from '../fan/mixed-bank.ts';
import type {
  CubicMetresPerSecond,
  Decibels,
  Fraction,
  KelvinDifference,
  Kelvins,
  KelvinsPerWatt,
  Metres,
  Pascals,
  Watts,
} from '../quantities/dimensions.ts';
import type { BuildDescription } from './describe.ts';
import type { LimitKind } from './enclosure.ts';
import type { SoundOutcome } from './sound-outcome.ts';

/** One line of a budget; the lines of a budget sum to its total. */
export interface BudgetLine {
  readonly label: string;
  readonly amount: number;
  /** Of a rise in temperature: what would make it smaller; absent in other budgets. */
  readonly eased?: 'by flow' | 'by keeping exhaust away' | 'by contact';
}

/** Flow and pressures of one leg. */
export interface LegOutcome {
  readonly leg: string;
  readonly from: string;
  readonly to: string;
  /** Mass flow [kg/s], positive along the leg. */
  readonly massFlow: number;
  /** Volume flow at the leg's inlet state [m³/s], signed like the mass flow. */
  readonly flow: number;
  /** Pressure of `from` less pressure of `to` [Pa]. */
  readonly pressureDifference: Pascals;
  /** Loss of each stage [Pa], negative where fans push; sums to the pressure difference. */
  readonly pressures: readonly BudgetLine[];
  readonly reversed: boolean;
}

/** A chamber's state. */
export interface ChamberOutcome {
  readonly chamber: string;
  readonly pressure: Pascals;
  readonly temperature: Kelvins;
}

/** A limit and how it is met. */
export interface LimitOutcome {
  readonly of: LimitKind;
  readonly limit: Kelvins;
  readonly found: Kelvins;
  /** Limit less found [K]; negative if broken. */
  readonly margin: KelvinDifference;
}

/** The fins under a part at the flow of now. */
export interface FinsOutcome {
  readonly place: string;
  /** From the base to the entering air [K/W]. */
  readonly resistance: KelvinsPerWatt;
  /** What that may be, of a sink known by one point only; absent of others. */
  readonly band?: { readonly low: KelvinsPerWatt; readonly high: KelvinsPerWatt };
}

/** A part's temperatures. */
export interface PartOutcome {
  readonly part: string;
  readonly power: Watts;
  readonly temperature: Kelvins;
  /** Where the kelvins above the room come from; sums to temperature less room. */
  readonly rise: readonly BudgetLine[];
  /** Of a probe in the base under the part [K]; absent if the part has none. */
  readonly probe?: Kelvins;
  /** Absent if the part sits in a chamber. */
  readonly fins?: FinsOutcome;
  /** Loop gain of the part alone at its present resistance and power [-]. */
  readonly loopGain: Fraction;
  /** The same with all that its heat warms [-]; absent if the part runs away. */
  readonly wholeLoopGain?: Fraction;
  readonly limits: readonly LimitOutcome[];
}

/** The outer wall of a chamber that lets heat through. */
export interface PanelOutcome {
  readonly chamber: string;
  /** Heat that leaves by it [W]. */
  readonly heat: Watts;
  /** Of its outer face [K]. */
  readonly temperature: Kelvins;
  readonly limits: readonly LimitOutcome[];
}

/** Why a duty is not adequate although no limit is broken: a part runs away, or its heat pipes dry out. */
export interface FailureOutcome {
  readonly part: string;
  readonly reason: string;
}

/** A bank at its working point. */
export interface BankOutcome {
  readonly place: string;
  /** The header that feeds it; absent if nobody said. */
  readonly header?: string;
  readonly fan: string;
  /** Fans that turn. */
  readonly count: number;
  /** Share of full speed [-]. */
  readonly ratio: Fraction;
  /** Speed of each fan [1/s]. */
  readonly speed: number;
  /** Flow through all its fans [m³/s], local state. */
  readonly flow: number;
  readonly pressureRise: Pascals;
  /** The rise by the points of the curve as given, where it is not the one computed with [Pa]: in a dip of stall. */
  readonly rawPressureRise?: Pascals;
  /** Flow over free delivery at this speed [-]. */
  readonly flowShare: Fraction;
  readonly power: Watts;
  readonly stalled: boolean;
  /** Its curve at this speed, to be drawn with the working point; absent if it does not run stalled. */
  readonly shape?: CurveShape;
  readonly overdriven: boolean;
  readonly backflow: boolean;
  readonly synthesisedCurve: boolean;
  /** Fans beside those that turn, and what flows along the stream through their places [m³/s]; absent if none. */
  readonly lost?: LostFans & { readonly flow: CubicMetresPerSecond };
}

/** A source of sound. */
export interface SourceOutcome {
  readonly source: string;
  readonly kind: 'fans' | 'opening';
  /** Distance from the listener [m]. */
  readonly distance: Metres;
  /** Level towards the listener above that in the rated direction [dB]. */
  readonly directivity: Decibels;
  /** At the listener [dB]. */
  readonly level: Decibels;
  /** Share of the sound energy [-]; shares sum to 1. */
  readonly share: Fraction;
}

/** Everything about one build in one duty at given speeds. */
export interface DutyOutcome {
  readonly duty: string;
  readonly share: Fraction;
  readonly room: Kelvins;
  readonly adequate: boolean;
  readonly banks: readonly BankOutcome[];
  readonly legs: readonly LegOutcome[];
  readonly chambers: readonly ChamberOutcome[];
  readonly parts: readonly PartOutcome[];
  /** Only walls that let heat through. */
  readonly panels: readonly PanelOutcome[];
  readonly failures: readonly FailureOutcome[];
  /** The limit with the least margin, of a part or of the panel of a chamber; absent if nothing has a limit. */
  readonly tightest?: { readonly part: string } & LimitOutcome;
  readonly sources: readonly SourceOutcome[];
  /** Free-field level at the listener [dB]. */
  readonly level: Decibels;
  readonly sound: SoundOutcome;
  readonly fanPower: Watts;
  /** Heat into the air: parts and fans, less what leaves by the walls [W]; sums to what the exhaust carries. */
  readonly heat: readonly BudgetLine[];
  /** Heat carried out of the box by the air [W]. */
  readonly heatCarried: Watts;
  /** Flow from outside into the box [kg/s]. */
  readonly throughFlow: number;
  /** Mean temperature of everything that leaves the box [K]. */
  readonly exhaustTemperature: Kelvins;
  readonly remarks: readonly string[];
}

/** A build solved in all duties. */
export interface BuildOutcome {
  readonly build: BuildDescription;
  readonly adequate: boolean;
  readonly duties: readonly DutyOutcome[];
  /** Mean level over the duties by their shares [dB]. */
  readonly level: Decibels;
  /** Loudest duty that has a share [dB]. */
  readonly loudest: Decibels;
  /** Mean fan power over the duties by their shares [W]. */
  readonly fanPower: Watts;
  /** Least margin over all duties with every bank at full speed [K]: what is left in hand. */
  readonly reserve: KelvinDifference;
}
