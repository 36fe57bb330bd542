import { z } from 'zod';
import type { HeatPath } from '../heat/heat-path.ts';
import { bounded, notNegative, positive, written } from '../quantities/written.ts';

/** Aluminium alloy of a base [W/(m·K)] (assumption; pure aluminium 220 to 237, copper 390). */
const USUAL_CONDUCTIVITY = 200;
/** Four to six heat pipes and their joints [K/W] (assumption; 0.03 to 0.15). */
const USUAL_PIPES = 0.05;

const pipesForm = z
  .strictObject({
    count: written.count,
    capacity: positive(written.power),
    resistance: notNegative(written.thermalResistance).default(USUAL_PIPES),
  })
  .meta({
    description:
      'heat pipes to the fins: count, capacity of one before it dries out as it lies, resistance of all together',
  });

const baseForm = z
  .strictObject({
    footprint: positive(written.rectangle),
    plate: positive(written.rectangle),
    thickness: positive(written.length),
    conductivity: positive(written.conductivity).default(USUAL_CONDUCTIVITY),
  })
  .refine(({ footprint, plate }) => footprint.width <= plate.width && footprint.height <= plate.height, {
    path: ['footprint'],
    message: 'found a footprint that is larger than the plate it stands on',
  })
  .meta({
    description: 'solid base under the part: its footprint in the middle of a plate, thickness, conductivity',
  });

const pasteForm = z
  .strictObject({
    thickness: positive(written.length),
    conductivity: positive(written.conductivity),
    area: positive(written.area),
  })
  .meta({ description: 'paste or pad under the part: thickness once pressed, conductivity, area' });

/** Fields of a part that say what its heat passes on its way to the fins or the air. */
export const heatPathFields = {
  fixed: notNegative(written.thermalResistance)
    .default(0)
    .meta({ description: 'what else lies between the part and the fins or the air, whatever the flow' }),
  pipes: pipesForm.optional(),
  base: baseForm.optional(),
  paste: pasteForm.optional(),
  probe: bounded(written.percent, 'from 0 % to 100 %', (share) => share >= 0 && share <= 1)
    .optional()
    .meta({ description: 'share of the base that a probe in it sees: 100 % right under the part' }),
};

const fieldsForm = z.strictObject(heatPathFields);

/** What the form makes of these fields. */
export type HeatPathWritten = z.output<typeof fieldsForm>;

/**
 * The path of a part's heat, and where its probe sits.
 *
 * @param fields as the form gives them
 */
export function heatPathOf(fields: HeatPathWritten): HeatPath & { readonly probe?: number } {
  const { fixed, pipes, base, paste, probe } = fields;
  return {
    resistance: fixed,
    ...(pipes ? { pipes } : {}),
    ...(base ? { base } : {}),
    ...(paste ? { paste } : {}),
    ...(probe === undefined ? {} : { probe }),
  };
}

/**
 * The first field that makes sense on fins only, if one is given.
 *
 * @param fields as the form gives them
 */
export function fieldOnFins({ pipes, base, probe }: HeatPathWritten): string | undefined {
  if (pipes) return 'pipes';
  if (base) return 'base';
  return probe === undefined ? undefined : 'probe';
}
