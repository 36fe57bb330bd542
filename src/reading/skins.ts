import { z } from 'zod';
import { airAt } from '../air/air.ts';
import { OUTSIDE, type Skin } from '../enclosure/enclosure.ts';
import { skinHeat } from '../heat/case-skin.ts';
import { touchLimits } from '../heat/panel.ts';
import type { Fraction, KelvinDifference, Kelvins, Pascals } from '../quantities/dimensions.ts';
import { bounded, notNegative, positive, written } from '../quantities/written.ts';
import { check, entriesOf, type Findings } from './findings.ts';
import { name } from './name.ts';
import { unknownName } from './name-findings.ts';
import { checkLimit } from './part-limits.ts';

/** Paint or anodised sheet [-]. Published: tables of emissivity. */
const USUAL_EMISSIVITY: Fraction = 0.85;
/** Temperature of the skin above the room at which the heat of a box is taken per kelvin [K]. Assumption, no source. */
const TYPICAL_RISE: KelvinDifference = 15;
/** Room in which it is taken [K]: 25 °C. */
const TYPICAL_ROOM: Kelvins = 298.15;

const boxForm = z
  .strictObject({
    base: positive(written.rectangle),
    height: positive(written.length),
    emissivity: bounded(
      written.factor,
      'an emissivity from 0 to 1',
      (value) => value >= 0 && value <= 1,
    ).default(USUAL_EMISSIVITY),
    feet: z.boolean().default(true),
  })
  .meta({ description: 'the outside of the chamber: base, height, emissivity, whether it stands on feet' });

const skinForm = z
  .strictObject({
    conductance: notNegative(written.conductance)
      .optional()
      .meta({ description: 'heat through the wall per kelvin between the air of the chamber and the room' }),
    box: boxForm.optional(),
    share: bounded(written.percent, 'from 0 % to 100 %', (share) => share >= 0 && share <= 1)
      .optional()
      .meta({ description: 'share of the drop from the air of the chamber to the room outside the panel' }),
    material: z.enum(['metal', 'glass', 'plastic']).optional(),
    limit: written.temperature.optional(),
  })
  .refine(({ conductance, box }) => (conductance === undefined) !== (box === undefined), {
    error: 'give the conductance of the wall, or the box to take it from',
  });

/** Form of `skin`: walls that let heat through, under the names of their chambers. */
export const skinsForm = z.record(name, skinForm);

type SkinFields = z.output<typeof skinForm>;

/** What walls refer to. */
export interface SkinContext {
  /** Index 0 is outside. */
  readonly chambers: readonly string[];
  /** Of the room air [Pa]. */
  readonly pressure: Pascals;
  /** Share of the drop that lies outside where a wall does not say [-]. */
  readonly share: Fraction;
  /** Room temperature of the hottest duty [K]. */
  readonly hottest: Kelvins;
}

/**
 * Reads `skin`; without it no heat passes the walls.
 *
 * @param value as written
 * @param context what it refers to
 * @param findings receives what is wrong
 */
export function readSkins(value: unknown, context: SkinContext, findings: Findings): readonly Skin[] {
  return entriesOf(value, ['skin'], findings).flatMap(([id, wall]) => {
    const fields = check(skinForm, wall, ['skin', id], findings);
    const chamber = context.chambers.indexOf(id);
    const known = context.chambers.slice(OUTSIDE + 1);
    if (chamber <= OUTSIDE) {
      if (known.length > 0) findings.push(unknownName('chamber', id, known, ['skin', id], 'key'));
      return [];
    }
    return fields ? [skinOf(fields, chamber, id, context, findings)] : [];
  });
}

function skinOf(
  fields: SkinFields,
  chamber: number,
  id: string,
  context: SkinContext,
  findings: Findings,
): Skin {
  const { material } = fields;
  const share = fields.share ?? context.share;
  const limit = fields.limit ?? (material && touchLimits[material].touched);
  const path = ['skin', id, fields.limit === undefined ? 'material' : 'limit'];
  if (limit !== undefined) checkLimit(limit, context.hottest, path, findings);
  return {
    chamber,
    conductance: fields.conductance ?? conductanceOf(fields, share, context.pressure),
    share,
    ...(material ? { material } : {}),
    ...(limit === undefined ? {} : { limit }),
  };
}

/** Conductance from the air inside: that of the skin to the room, times the share of the drop that lies there [W/K]. */
function conductanceOf({ box }: SkinFields, share: Fraction, pressure: Pascals): number {
  if (!box) return 0;
  const { base, height, emissivity, feet } = box;
  const film = airAt({ pressure, humidityRatio: 0 }, TYPICAL_ROOM + TYPICAL_RISE / 2);
  const sides = { width: base.width, depth: base.height, height, emissivity, onFeet: feet };
  const heat = skinHeat(sides, TYPICAL_ROOM + TYPICAL_RISE, TYPICAL_ROOM, film);
  return (share * (heat.sides + heat.top + heat.underside + heat.radiation)) / TYPICAL_RISE;
}
