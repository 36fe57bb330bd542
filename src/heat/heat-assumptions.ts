import type { Fraction, Kelvins } from '../quantities/dimensions.ts';

/** Numbers of the heat model that rest on judgement; a scenario may override each. */
export interface HeatAssumptions {
  /** Loop gain from which on a part is reported as touchy [-]. */
  readonly loopGainWarning: Fraction;
  /** Share of the heat pipes' capacity from which on they are reported as heavily loaded [-]. */
  readonly pipeWarning: Fraction;
  /** Share of the drop from the air of a chamber to the room that lies outside its panels [-]: films alike. */
  readonly panelShare: Fraction;
  /** What a part bears that has no limit of its own [K]: up to the melting point of solder (SnAgCu, 217 °C, common practice). */
  readonly hottestPart: Kelvins;
}

/** The defaults. Model assumptions, no source. */
export const HEAT_ASSUMPTIONS: HeatAssumptions = {
  loopGainWarning: 0.3,
  pipeWarning: 0.7,
  panelShare: 0.5,
  hottestPart: 490,
};
