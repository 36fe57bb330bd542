import type { Element } from '../elements/element.ts';
import { REFERENCE_VISCOSITY } from '../elements/reference-air.ts';
import { REFERENCE_DENSITY } from '../fan/curve.ts';
import type { BankRise } from '../fan/mixed-bank.ts';
import type { Fraction, KilogramsPerSecond, Pascals } from '../quantities/dimensions.ts';
import { type BankStage, evaluateBank } from './bank-stage.ts';
import type { LegLaw } from './leg-law.ts';

/** A passive element in a leg. */
export interface ElementStage {
  readonly kind: 'element';
  readonly element: Element;
  /** Share of its face that the air uses because fans stand close [-], 0 < share ≤ 1; absent: all of it. */
  readonly used?: Fraction;
}

/** An empty place: air passes without loss. */
export interface EmptyStage {
  readonly kind: 'empty';
}

export type Stage = ElementStage | BankStage | EmptyStage;

/**
 * Stages in series as one leg law. The caller sets the state of the air at each stage and the speed of each
 * bank, calls `refresh`, and may then evaluate at any number of mass flows without allocation.
 */
export interface SeriesLeg extends LegLaw {
  readonly stages: readonly Stage[];
  /** Density of the air at each stage [kg/m³]. */
  readonly densities: Float64Array;
  /** Dynamic viscosity of the air at each stage [Pa·s]. */
  readonly viscosities: Float64Array;
  /** Speed of each bank as a share of full speed [-]; meaningless at other stages. */
  readonly ratios: Float64Array;
  /** Pressure that the lighter air of the leg gives along it, by the height it rises [Pa]. */
  lift: Pascals;
  /** Takes over densities, viscosities and ratios. */
  readonly refresh: () => void;
  /** Pressure lost in one stage by itself at a mass flow [Pa]; negative where a fan pushes. */
  readonly stageLoss: (stage: number, flow: KilogramsPerSecond) => Pascals;
}

interface Mutable {
  loss: number;
  slope: number;
  lift: number;
}

/**
 * Loss of a passive element [Pa] and its slope against the volume flow [Pa·s/m³].
 *
 * @param element the element
 * @param flow volume flow [m³/s], either sign
 * @param density of the local air [kg/m³]
 * @param viscosity of the local air [Pa·s]
 */
export function elementLoss(element: Element, flow: number, density: number, viscosity: number): Pascals {
  const linear = element.viscous * viscosity + element.faint * density;
  const own = element.law ? element.law.loss(flow, density, viscosity) : 0;
  return linear * flow + element.inertial * density * flow * Math.abs(flow) + own;
}

/** Index of the next bank upstream of each stage, -1 if there is none. */
function upstreamBanks(stages: readonly Stage[]): readonly number[] {
  let last = -1;
  return stages.map((stage, index) => {
    const upstream = last;
    if (stage.kind === 'bank') last = index;
    return upstream;
  });
}

/** A leg's stages with the state of the air at each, and what `refresh` makes of them. */
interface Chain {
  readonly stages: readonly Stage[];
  readonly densities: Float64Array;
  readonly viscosities: Float64Array;
  readonly ratios: Float64Array;
  readonly upstream: readonly number[];
  /** Derating in force at each bank [-]. */
  readonly factors: Float64Array;
  /** Stages whose elements have a law of their own. */
  readonly laws: readonly number[];
  readonly banks: readonly number[];
  linear: number;
  quadratic: number;
}

const bankRise: BankRise = { rise: 0, slope: 0, fanFlow: 0 };

/** Evaluates the bank at a stage; the results are left in `bankRise`. */
function evaluateBankAt(chain: Chain, index: number, flow: number): void {
  const bank = chain.stages[index] as BankStage;
  const density = chain.densities[index] as number;
  const factor = chain.factors[index] as number;
  evaluateBank(bank, flow, chain.ratios[index] as number, density, factor, bankRise);
}

function refreshChain(chain: Chain): void {
  chain.linear = 0;
  chain.quadratic = 0;
  for (let index = 0; index < chain.stages.length; index++) {
    const stage = chain.stages[index] as Stage;
    if (stage.kind === 'element') {
      const density = chain.densities[index] as number;
      const used = stage.used ?? 1;
      const viscous = stage.element.viscous * (chain.viscosities[index] as number);
      chain.linear += (viscous / density + stage.element.faint) / used;
      chain.quadratic += stage.element.inertial / (density * used * used);
    } else if (stage.kind === 'bank') {
      if (stage.walls !== undefined) chain.quadratic += stage.walls / (chain.densities[index] as number);
      const before = chain.upstream[index] as number;
      chain.factors[index] = before >= 0 && (chain.ratios[before] as number) > 0 ? stage.derating : 1;
    }
  }
}

function evaluateChain(chain: Chain, flow: number, result: Mutable): void {
  const magnitude = Math.abs(flow);
  result.loss = (chain.linear + chain.quadratic * magnitude) * flow - result.lift;
  result.slope = chain.linear + 2 * chain.quadratic * magnitude;
  for (const index of chain.laws) {
    const { element, used = 1 } = chain.stages[index] as ElementStage;
    const { law } = element;
    if (!law) continue;
    const density = chain.densities[index] as number;
    const viscosity = chain.viscosities[index] as number;
    const scale = density * used;
    result.loss += law.loss(flow / scale, density, viscosity);
    result.slope += law.slope(flow / scale, density, viscosity) / scale;
  }
  for (const index of chain.banks) {
    evaluateBankAt(chain, index, flow);
    result.loss -= bankRise.rise;
    result.slope -= bankRise.slope;
  }
}

function stageLossOf(chain: Chain, index: number, flow: number): Pascals {
  const stage = chain.stages[index] as Stage;
  if (stage.kind === 'empty') return 0;
  if (stage.kind === 'bank') {
    evaluateBankAt(chain, index, flow);
    return -bankRise.rise;
  }
  const density = chain.densities[index] as number;
  return elementLoss(stage.element, flow / density, density, chain.viscosities[index] as number);
}

function indexesOf(stages: readonly Stage[], wanted: (stage: Stage) => boolean): readonly number[] {
  return stages.flatMap((stage, index) => (wanted(stage) ? [index] : []));
}

/**
 * Joins stages in series, in the order of the stream.
 *
 * Fan law: pressure ~ speed² and density, flow ~ speed (affinity); n fans side by side share the flow; the
 * positive rise of a bank behind another running bank of the leg is derated.
 * Source: fan laws (ISO 5801, AMCA 210, from memory); derating is a model assumption.
 *
 * @param stages what the leg holds, `from` end first
 */
export function seriesLeg(stages: readonly Stage[]): SeriesLeg {
  const size = stages.length;
  const chain: Chain = {
    stages,
    densities: new Float64Array(size).fill(REFERENCE_DENSITY),
    viscosities: new Float64Array(size).fill(REFERENCE_VISCOSITY),
    ratios: new Float64Array(size),
    upstream: upstreamBanks(stages),
    factors: new Float64Array(size).fill(1),
    laws: indexesOf(stages, (stage) => stage.kind === 'element' && stage.element.law !== undefined),
    banks: indexesOf(stages, (stage) => stage.kind === 'bank'),
    linear: 0,
    quadratic: 0,
  };
  const { densities, viscosities, ratios } = chain;
  const result: Mutable = { loss: 0, slope: 0, lift: 0 };
  return Object.assign(result, {
    stages,
    densities,
    viscosities,
    ratios,
    refresh: () => refreshChain(chain),
    evaluate: (flow: number) => evaluateChain(chain, flow, result),
    stageLoss: (index: number, flow: number) => stageLossOf(chain, index, flow),
  });
}
