import type { Fraction, KilogramsPerSecond } from '../quantities/dimensions.ts';

/**
 * Air that a leg exchanges between its ends at the least [kg/s]: keeps temperatures finite where no air moves. With it
 * one watt warms the air by 10 000 K, so nothing adequate ever depends on it. Air that hardly moves comes back as much
 * as it goes, so that the exchange carries heat and makes or loses none.
 */
export const STAGNANT_FLOW = 1e-7;

/**
 * Flow below which a leg holds air of both its ends [kg/s], about 0.15 m³/h: so that neither its warmth nor its weight
 * jumps where the flow turns round. Model assumption, no source.
 */
const SLOW_FLOW: KilogramsPerSecond = 5e-5;

/**
 * Share of the air in a leg that came in at its first end [-]: one half where nothing moves, all from `SLOW_FLOW` on.
 *
 * Source: model assumption, no published source.
 *
 * @param flow mass flow [kg/s]
 */
export function shareFromFirst(flow: KilogramsPerSecond): Fraction {
  return Math.min(1, Math.max(0, 0.5 * (1 + flow / SLOW_FLOW)));
}

/**
 * Share of the heat given off in a leg that leaves it the way its air runs [-]; the rest leaves at the other end. All
 * where air moves: without the rest the air of a chamber would jump where a flow turns round, and never settle.
 *
 * Source: model assumption, no published source.
 *
 * @param flow mass flow [kg/s]
 */
export function shareAhead(flow: KilogramsPerSecond): Fraction {
  return runsAlong(flow) ? shareFromFirst(flow) : 1 - shareFromFirst(flow);
}

/**
 * Whether air that hardly moves counts as running along its leg: always, because its sign is rounding, and a leg
 * that takes its air now from one end and now from the other never settles.
 *
 * Source: model assumption, no published source.
 *
 * @param flow mass flow [kg/s]
 */
export function runsAlong(flow: KilogramsPerSecond): boolean {
  return flow > -STAGNANT_FLOW;
}

/**
 * Air that passes a leg in the sense in which it runs and takes up the heat given off there [kg/s].
 *
 * Source: model assumption, no published source.
 *
 * @param flow mass flow [kg/s]
 */
export function streamAlong(flow: KilogramsPerSecond): KilogramsPerSecond {
  return Math.max(Math.abs(flow), STAGNANT_FLOW);
}

/**
 * Air that comes back through a leg at the same time [kg/s]: the rest of the exchange, none where air moves.
 *
 * Source: conservation of mass.
 *
 * @param flow mass flow [kg/s]
 */
export function streamBack(flow: KilogramsPerSecond): KilogramsPerSecond {
  return runsAlong(flow) ? streamAlong(flow) - flow : 0;
}
