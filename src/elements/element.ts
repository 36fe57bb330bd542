import type { ZodType } from 'zod';
import type { Air } from '../air/air.ts';
import type {
  CubicMetresPerSecond,
  Fraction,
  KelvinsPerWatt,
  KilogramsPerCubicMetre,
  PascalSeconds,
  Pascals,
  SquareMetres,
} from '../quantities/dimensions.ts';
import type { PerforatedSheet } from './perforated-sheet.ts';

/** Loss of an element that is no sum of a linear and a quadratic term in the flow. */
export interface FlowLaw {
  /** Pressure lost [Pa] at a volume flow [m³/s] of either sign; odd in the flow, strictly increasing. */
  loss(flow: CubicMetresPerSecond, density: KilogramsPerCubicMetre, viscosity: PascalSeconds): Pascals;
  /** Derivative of the loss with respect to the flow [Pa·s/m³], > 0. */
  slope(flow: CubicMetresPerSecond, density: KilogramsPerCubicMetre, viscosity: PascalSeconds): number;
}

/** What a fan hears of an element that stands before or behind it: a row of the installation table. */
export type Disturbance = 'guard' | 'mesh' | 'panel' | 'fins' | 'wall' | 'bar';

/**
 * Anything passive that air passes. The loss [Pa] at volume flow Q [m³/s], density ρ and viscosity µ is
 *
 *   Δp = viscous·µ·Q + faint·ρ·Q + inertial·ρ·Q|Q| + law(Q)
 *
 * so that elements in series add by adding their coefficients.
 */
export interface Element {
  /** Laminar coefficient [1/m³], ≥ 0. */
  readonly viscous: number;
  /** Inertial coefficient [1/m⁴], ≥ 0: K/(2A²). */
  readonly inertial: number;
  /** Small linear part of a loss known only as K [1/(m·s)], ≥ 0; it scales with density. */
  readonly faint: number;
  /** A loss beside the three coefficients, if the physics has one. */
  readonly law?: FlowLaw;
  /** Gross face [m²] if the element radiates flow noise as a vent or grille. */
  readonly ventFace?: SquareMetres;
  /** Gross face [m²] of what stands across the stream: fans so close to it that it is no plenum use only a part. */
  readonly face?: SquareMetres;
  /** Free (open) area [m²], where the word makes sense: shown and used for velocities. */
  readonly freeArea?: SquareMetres;
  /**
   * Resistance [K/W] from the base of a fin stack to the air entering it, at a volume flow (inlet state,
   * sign ignored) and the inlet air. Never below 1/(ṁ·cp).
   */
  readonly finResistance?: (flow: CubicMetresPerSecond, inlet: Air) => KelvinsPerWatt;
  /** How much further than usual that resistance may be off at a flow, as `lossUncertainty` [-]; absent: no further. */
  readonly finUncertainty?: (flow: CubicMetresPerSecond, inlet: Air) => Fraction;
  /** What a reader should know of that resistance at a flow: far outside what was measured, and the like. */
  readonly remarksAt?: (flow: CubicMetresPerSecond, inlet: Air) => readonly string[];
  /** The sheet with its holes, if it is one: for those who draw it or look for a better one. */
  readonly sheet?: PerforatedSheet;
  /** What it does beside letting air pass, where one may think of doing without it. */
  readonly purpose?: 'keeps dust out' | 'leaks';
  /** The element as an obstacle next to a fan; absent: no disturbance. */
  readonly disturbance?: Disturbance;
  /** The true loss lies within a factor of one and this, nine times in ten [-]: 0.25 is from 1/1.25 to 1.25 times. */
  readonly lossUncertainty: Fraction;
  /** What a reader should know: geometry outside a formula's range and the like. */
  readonly remarks: readonly string[];
}

/** A kind of element as a scenario file knows it: one file, one line in `kinds.ts`. */
export interface ElementKind {
  /** The key that tells the kind in a file, for example `perforated`. */
  readonly key: string;
  /** One line for help texts. */
  readonly summary: string;
  /** Source of the law, for explanations. */
  readonly source: string;
  /** Form of the fields as written, units and all. */
  readonly form: ZodType;
  /** Checks written fields against the form and builds the element; throws a ZodError on misfit. */
  readonly make: (written: unknown) => Element;
}

/**
 * Declares a kind of element; the type of its fields stays inside.
 *
 * @param kind key, summary, source, form and the maker of the element from the fields in SI
 */
export function elementKind<Fields>(kind: {
  readonly key: string;
  readonly summary: string;
  readonly source: string;
  readonly form: ZodType<Fields>;
  readonly build: (fields: Fields) => Element;
}): ElementKind {
  const { build, ...rest } = kind;
  return { ...rest, make: (written) => build(kind.form.parse(written)) };
}
