/** Other published correlations for developing laminar flow between plates, against which the one in use is held. */

import { channelArea } from '../../src/elements/fin-channels.ts';
import { finHeat, type Low, type Tower } from '../../src/elements/fins.ts';
import { AIR_AT_25 } from './loss-of.ts';
import { flowInto } from './sample-stacks.ts';

/**
 * Composite of Teertstra, Yovanovich & Culham, on the gap b and the temperature of the ENTERING air.
 *
 * Published: electronics-cooling.com 2003/02 and its abstract; 0.1 < Re* < 100.
 *
 * @param channel Re* = Re_b·b/L
 * @param prandtl Pr
 */
export function teertstraNusselt(channel: number, prandtl: number): number {
  const developed = (channel * prandtl) / 2;
  const developing =
    0.664 * Math.sqrt(channel) * prandtl ** (1 / 3) * Math.sqrt(1 + 3.65 / Math.sqrt(channel));
  return (developed ** -3 + developing ** -3) ** (-1 / 3);
}

/**
 * Three asymptotes of the VDI Heat Atlas, on twice the gap and the logarithmic mean temperature difference.
 *
 * Published: Modelica Standard Library, kc_evenGapLaminar, after VDI Heat Atlas Gb 7.
 *
 * @param distance x* = (L/2b)/(Re·Pr)
 * @param prandtl Pr
 */
export function atlasNusselt(distance: number, prandtl: number): number {
  const developing = 1.841 * distance ** (-1 / 3);
  const entering = (2 / (1 + 22 * prandtl)) ** (1 / 6) * distance ** -0.5;
  return (7.541 ** 3 + developing ** 3 + entering ** 3) ** (1 / 3);
}

interface Route {
  /** With the heat transfer coefficient taken back from the entering air to the mean [K/W]. */
  readonly teertstra: number;
  /** Straight from the coefficient on the entering air, R = 1/(h·A) [K/W]. */
  readonly teertstraDirect: number;
  /** The mistake: the same coefficient put into 1 - exp(-NTU), the warming of the air counted twice [K/W]. */
  readonly countedTwice: number;
  /** [K/W] */
  readonly atlas: number;
  /** 1/(ρ·Q·cp) [K/W]. */
  readonly floor: number;
}

/** Resistance of a stack at a velocity before its face [m/s] by the other routes, air entering at 25 °C. */
export function otherRoutes(stack: Tower | Low, velocity: number): Route {
  const { channels, efficiency, baseArea } = finHeat(stack);
  const { gap, depth } = channels;
  const { density, viscosity, conductivity, specificHeat } = AIR_AT_25;
  const prandtl = (viscosity * specificHeat) / conductivity;
  const flow = flowInto(stack, velocity);
  const capacity = density * flow * specificHeat;
  const reynolds = (density * (flow / channelArea(channels)) * gap) / viscosity;
  const channel = (reynolds * gap) / depth;
  const finArea = 2 * channels.count * channels.height * depth;
  const wetted = (h: number) => baseArea + efficiency(h) * finArea;
  const throughUnits = (h: number) => 1 / (capacity * -Math.expm1((-h * wetted(h)) / capacity));

  const entering = teertstraNusselt(channel, prandtl);
  const enteringTransfer = (entering * conductivity) / gap;
  const share = Math.min(entering / ((channel * prandtl) / 2), 1 - 1e-12);
  const meanTransfer = (-Math.log(1 - share) * capacity) / finArea;
  const distance = depth / (2 * gap) / (2 * reynolds * prandtl);
  return {
    teertstra: throughUnits(meanTransfer),
    teertstraDirect: 1 / (enteringTransfer * wetted(enteringTransfer)),
    countedTwice: throughUnits(enteringTransfer),
    atlas: throughUnits((atlasNusselt(distance, prandtl) * conductivity) / (2 * gap)),
    floor: 1 / capacity,
  };
}
