import {
  type BalanceReport,
  createBalancer,
  type NetworkState,
  newNetworkState,
} from '../../src/airway/balance.ts';
import type { LegLaw } from '../../src/airway/leg-law.ts';
import { type SeriesLeg, type Stage, seriesLeg } from '../../src/airway/series.ts';
import type { Topology } from '../../src/airway/topology.ts';
import type { Element } from '../../src/elements/element.ts';
import type { FanCurve } from '../../src/fan/curve.ts';
import { DENSITY } from './leg-laws.ts';

/** A balanced network. */
export interface Solved {
  readonly report: BalanceReport;
  readonly pressures: readonly number[];
  /** Volume flows at 1.2 kg/m³ [m³/s]. */
  readonly flows: readonly number[];
  readonly state: NetworkState;
}

/** Balances a network of legs. */
export function solve(
  topology: Topology,
  laws: readonly LegLaw[],
  state = newNetworkState(topology),
): Solved {
  const report = createBalancer(topology)(laws, state);
  return {
    report,
    pressures: [...state.pressures],
    flows: Array.from(state.flows, (flow) => flow / DENSITY),
    state,
  };
}

/** Largest relative distance of two lists. */
export function distance(found: readonly number[], expected: readonly number[]): number {
  if (found.length !== expected.length) return Number.NaN;
  return Math.max(...expected.map((value, index) => Math.abs((found[index] ?? Number.NaN) / value - 1)));
}

/** Fans that lead into one chamber side by side, and what leads out of it. */
export function intoOneChamber(ins: readonly LegLaw[], outs: readonly LegLaw[]): Solved {
  const topology = {
    chambers: 2,
    from: [...ins.map(() => 0), ...outs.map(() => 1)],
    to: [...ins.map(() => 1), ...outs.map(() => 0)],
  };
  return solve(topology, [...ins, ...outs]);
}

/** Fans in a leg, none before them. */
export function bank(curve: FanCurve, count = 1): Stage {
  return { kind: 'bank', curve, count, derating: 1 };
}

/** Resistance a·Q + b·Q|Q| at 1.2 kg/m³ and 1.81e-5 Pa·s. */
export function passive(a: number, b: number): Stage {
  const element: Element = {
    viscous: a / 1.81e-5,
    inertial: b / DENSITY,
    faint: 0,
    lossUncertainty: 0,
    remarks: [],
  };
  return { kind: 'element', element };
}

/** A leg in air of 1.2 kg/m³ with all banks at one speed. */
export function legOf(stages: readonly Stage[], ratio = 1): SeriesLeg {
  const leg = seriesLeg(stages);
  leg.ratios.fill(ratio);
  leg.refresh();
  return leg;
}
