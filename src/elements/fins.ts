import { z } from 'zod';
import type { Metres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { type Element, elementKind } from './element.ts';
import { channelArea, channelLoss, type FinChannels } from './fin-channels.ts';
import { type FinEfficiency, plateAboutPipe, straightFin } from './fin-efficiency.ts';
import { type FinHeat, finState } from './fin-heat.ts';
import type { Field } from './hole-pattern.ts';

/** Fins stacked on pipes; the width of the face runs along a fin, the height across the stack [m]. */
export interface Tower {
  readonly fins: 'tower';
  readonly face: Field;
  readonly depth: Metres;
  readonly pitch: Metres;
  readonly fin: Metres;
  /** [W/(m·K)] */
  readonly conductivity: number;
  /** Half the spacing of the pipe rows [m]. */
  readonly pipes?: Metres | undefined;
  /** Diameter of a pipe [m]; with `cell` instead of `pipes`. */
  readonly pipe?: Metres | undefined;
  /** Part of a fin that belongs to one pipe [m]. */
  readonly cell?: Field | undefined;
}

/** Fins on a base; the width of the face runs across the fins, the height from base to tip [m]. */
export interface Low {
  readonly fins: 'low';
  readonly face: Field;
  readonly depth: Metres;
  readonly count: number;
  readonly fin: Metres;
  /** [W/(m·K)] */
  readonly conductivity: number;
}

/** A flat base without fins; the width of the face runs across the stream, the height to the wall above it [m]. */
export interface Flat {
  readonly fins: 'flat';
  readonly face: Field;
  readonly depth: Metres;
}

/** Aluminium alloy of fins [W/(m·K)] (assumption; pure aluminium 220 to 237, copper 390). */
const USUAL_CONDUCTIVITY = 200;
/** Half the spacing of pipe rows about which nothing is said [m] (assumption; usually 8 to 12 mm). */
const USUAL_REACH: Metres = 0.01;
/** Above this aspect ratio the side walls lower the heat transfer noticeably [-]. */
const SLIM = 0.1;

const conductivity = positive(written.conductivity).default(USUAL_CONDUCTIVITY);

const towerForm = z
  .strictObject({
    fins: z.literal('tower'),
    face: positive(written.rectangle),
    depth: positive(written.length),
    pitch: positive(written.length),
    fin: positive(written.length),
    conductivity,
    pipes: positive(written.length).optional(),
    pipe: positive(written.length).optional(),
    cell: positive(written.rectangle).optional(),
  })
  .refine(({ pitch, fin }) => fin < pitch, {
    path: ['pitch'],
    message: 'found a pitch no wider than the fin is thick, expected pitch > fin',
  })
  .refine(({ pipes, pipe, cell }) => (pipe === undefined) === (cell === undefined) && !(pipe && pipes), {
    path: ['pipes'],
    message: 'expected either pipes (half the spacing of the pipe rows), or pipe and cell',
  })
  .refine(({ pipe, cell }) => !(pipe && cell) || pipe < Math.min(cell.width, cell.height), {
    path: ['cell'],
    message: 'found a cell no wider than its pipe, expected both sides > pipe',
  });

const lowForm = z
  .strictObject({
    fins: z.literal('low'),
    face: positive(written.rectangle),
    depth: positive(written.length),
    count: written.count,
    fin: positive(written.length),
    conductivity,
  })
  .refine(({ count }) => count >= 2, { path: ['count'], message: 'found a single fin, expected 2 or more' })
  .refine(({ face, count, fin }) => count * fin < face.width, {
    path: ['fin'],
    message: 'found fins as thick together as the face is wide, expected count x fin < width',
  });

const flatForm = z.strictObject({
  fins: z.literal('flat'),
  face: positive(written.rectangle),
  depth: positive(written.length),
});

/**
 * Channels and heat side of a tower. The number of channels is height over pitch, not rounded, because the true one
 * depends on how the stack ends.
 */
function towerHeat(tower: Tower): FinHeat {
  const { face, depth, pitch, fin } = tower;
  const channels: FinChannels = {
    count: face.height / pitch,
    gap: pitch - fin,
    height: face.width,
    depth,
    face: face.width * face.height,
  };
  return { channels, efficiency: towerEfficiency(tower), baseArea: 0 };
}

function towerEfficiency({ fin, conductivity: metal, pipes, pipe, cell }: Tower): FinEfficiency {
  const sheet = { thickness: fin, conductivity: metal };
  if (pipe === undefined || cell === undefined) return straightFin(sheet, pipes ?? USUAL_REACH);
  const halfShort = Math.min(cell.width, cell.height) / 2;
  const halfLong = Math.max(cell.width, cell.height) / 2;
  return plateAboutPipe(sheet, { radius: pipe / 2, halfShort, halfLong });
}

function lowHeat({ face, depth, count, fin, conductivity: metal }: Low): FinHeat {
  const gap = (face.width - count * fin) / (count - 1);
  const channels = { count: count - 1, gap, height: face.height, depth, face: face.width * face.height };
  return {
    channels,
    // A shroud closes the tips, so the whole height is the reach and no heat leaves at the tip.
    efficiency: straightFin({ thickness: fin, conductivity: metal }, face.height),
    baseArea: channels.count * gap * depth,
  };
}

/** A flat base is one channel, warm on one side. */
function flatHeat({ face, depth }: Flat): FinHeat {
  return {
    channels: { count: 1, gap: face.height, height: face.width, depth, face: face.width * face.height },
    efficiency: () => 1,
    baseArea: face.width * depth,
    flat: true,
  };
}

/**
 * Channels, fin efficiency and base of a fin stack.
 *
 * Source: plane geometry; the reach of a fin where nothing is said of pipes is a model assumption, no source.
 *
 * @param stack as the form gives it, SI
 */
export function finHeat(stack: Tower | Low | Flat): FinHeat {
  if (stack.fins === 'flat') return flatHeat(stack);
  return stack.fins === 'tower' ? towerHeat(stack) : lowHeat(stack);
}

function build(stack: Tower | Low | Flat): Element {
  const heat = finHeat(stack);
  const { gap, height } = heat.channels;
  const wide = !heat.flat && gap > SLIM * height;
  return {
    viscous: 0,
    faint: 0,
    ...channelLoss(heat.channels),
    face: heat.channels.face,
    freeArea: channelArea(heat.channels),
    finResistance: (flow, inlet) => finState(heat, flow, inlet).resistance,
    disturbance: 'fins',
    lossUncertainty: 0.15,
    remarks: wide ? ['the gap is wide for so low a fin: at low flow the resistance may be 10 % higher'] : [],
  };
}

/** Fin stack, all flow through the fins: `{ fins: tower, face: 92 x 92 mm, depth: 25 mm, pitch: 2 mm, fin: 0.4 mm }`. */
export const fins = elementKind({
  key: 'fins',
  summary:
    'fin stack: tower (face, depth, pitch, fin, pipes) or low (face, depth, count, fin); conductivity; ' +
    'or flat, a base without fins (face, depth)',
  source:
    'heat: Stephan (1959), Shah & Bhatti (1987), Gnielinski (1976), flat: VDI Heat Atlas; fins: Incropera & DeWitt, Schmidt (1949); pressure: ' +
    'Muzychka & Yovanovich composite of Shah & London (1978), Blasius, White, Fluid Mechanics (all from memory)',
  form: z.discriminatedUnion('fins', [towerForm, lowForm, flatForm]),
  build,
});
