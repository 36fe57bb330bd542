import type { LegLaw } from '../../src/airway/leg-law.ts';

/** Density that losses and fan curves in these tests refer to [kg/m³]. */
export const DENSITY = 1.2;

/** A law of the volume flow [m³/s] at 1.2 kg/m³, as a law of the mass flow. */
export function lawOf(loss: (flow: number) => number, slope: (flow: number) => number): LegLaw {
  const law = {
    loss: 0,
    slope: 0,
    evaluate(massFlow: number): void {
      const flow = massFlow / DENSITY;
      law.loss = loss(flow);
      law.slope = slope(flow) / DENSITY;
    },
  };
  return law;
}

/** Resistance a·Q + b·Q|Q| [Pa·s/m³, Pa·s²/m⁶]. */
export function resistance(a: number, b: number): LegLaw {
  return lawOf(
    (flow) => a * flow + b * flow * Math.abs(flow),
    (flow) => a + 2 * b * Math.abs(flow),
  );
}

/** Resistance R·|Q|ⁿ [Pa·(s/m³)ⁿ], n ≥ 1. */
export function powerResistance(factor: number, exponent: number): LegLaw {
  return lawOf(
    (flow) => factor * Math.sign(flow) * Math.abs(flow) ** exponent,
    (flow) => factor * exponent * Math.abs(flow) ** (exponent - 1),
  );
}

/** Pressure source p0·(1 − (Q/Q0)|Q/Q0|) [Pa, m³/s]: a parabola that goes on rising in reverse flow. */
export function parabolicFan(shutOff: number, freeDelivery: number): LegLaw {
  const quadratic = shutOff / freeDelivery ** 2;
  return lawOf(
    (flow) => quadratic * flow * Math.abs(flow) - shutOff,
    (flow) => 2 * quadratic * Math.abs(flow),
  );
}

/** Laws in series as one. */
export function inSeries(...laws: readonly LegLaw[]): LegLaw {
  const all = {
    loss: 0,
    slope: 0,
    evaluate(massFlow: number): void {
      all.loss = 0;
      all.slope = 0;
      for (const law of laws) {
        law.evaluate(massFlow);
        all.loss += law.loss;
        all.slope += law.slope;
      }
    },
  };
  return all;
}
