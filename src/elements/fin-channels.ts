import type { Metres, SquareMetres } from '../quantities/dimensions.ts';
import { channelFriction } from './channel-friction.ts';
import type { FlowLaw } from './element.ts';
import { entranceGrowth, rectangularFriction } from './laminar-friction.ts';

/** Equal rectangular channels side by side between fins. */
export interface FinChannels {
  /** Number of channels [-], > 0; need not be whole. */
  readonly count: number;
  /** Clear distance between two fins [m]. */
  readonly gap: Metres;
  /** Extent of a channel along the fins, across the stream [m]. */
  readonly height: Metres;
  /** Length along the stream [m]. */
  readonly depth: Metres;
  /** Area of the stream before and behind the channels [m²], at least that of the channels. */
  readonly face: SquareMetres;
}

/** Pressure side of fin channels: entry and exit as `inertial`, friction as `law`. */
export interface ChannelLoss {
  /** [1/m⁴] */
  readonly inertial: number;
  readonly law: FlowLaw;
}

/**
 * Free area of all channels [m²].
 *
 * Source: plane geometry.
 *
 * @param channels number and sizes
 */
export function channelArea({ count, gap, height }: FinChannels): SquareMetres {
  return count * gap * height;
}

/**
 * Heads of the velocity in the channels lost at their entry and exit [-]: 0.42·(1 - σ) + (1 - σ)².
 *
 * Source: White, Fluid Mechanics (from memory), with σ the ratio of areas; where a diameter ratio d/D stands there,
 * its square is meant.
 *
 * @param share σ, area of the channels over the area before and behind them [-], 0 to 1
 */
export function entryAndExitLoss(share: number): number {
  return 0.42 * (1 - share) + (1 - share) ** 2;
}

/**
 * Loss of fin channels: developing laminar friction, or turbulent friction where that is larger, with entry and exit.
 *
 * The hydraulic diameter is the true one, 2bH/(b + H), because the friction factor of a rectangular duct is defined
 * on it; with 2b, as some publications have it, low stacks lose 12 to 17 % too little.
 *
 * Source: Muzychka & Yovanovich composite of Shah & London (1978); Blasius (1913); White, Fluid Mechanics (all from
 * memory).
 *
 * @param channels number and sizes, > 0
 */
export function channelLoss(channels: FinChannels): ChannelLoss {
  const area = channelArea(channels);
  const { gap, height, depth } = channels;
  const diameter = (2 * gap * height) / (gap + height);
  const developed = rectangularFriction(Math.min(gap, height) / Math.max(gap, height));
  const friction = channelFriction(entranceGrowth(depth / diameter), developed);
  const perFlow = diameter / area;
  // Δp = scale·µ·Q·(f·Re), because µ/(ρ·V) is Dh/Re.
  const scale = depth / (2 * diameter * diameter * area);
  return {
    inertial: entryAndExitLoss(area / channels.face) / (2 * area * area),
    law: {
      loss: (flow, density, viscosity) =>
        scale * viscosity * flow * friction.value((perFlow * density * Math.abs(flow)) / viscosity),
      slope: (flow, density, viscosity) => {
        const reynolds = (perFlow * density * Math.abs(flow)) / viscosity;
        return scale * viscosity * friction.value(reynolds) * (1 + friction.exponent(reynolds));
      },
    },
  };
}
