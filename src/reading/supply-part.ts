import { z } from 'zod';
import { OUTSIDE, type Part, type SupplyReading } from '../enclosure/enclosure.ts';
import {
  heatOfLoads,
  type SupplyEfficiency,
  type SupplyState,
  supplyAt,
  WALL_AGREEMENT,
} from '../heat/supply.ts';
import { supplyTiers, type TierPoint } from '../heat/supply-tiers.ts';
import type { Fraction, Watts } from '../quantities/dimensions.ts';
import { roundedQuantity } from '../quantities/rounded.ts';
import { bounded, notNegative, positive, written } from '../quantities/written.ts';
import type { Findings } from './findings.ts';
import { name } from './name.ts';
import { limitForm } from './part-limits.ts';
import { ONE_SEAT } from './part-seat.ts';

/** Efficiency of a supply of which nothing is known [-]: 0.85 to 0.91. Assumption, no source. */
const USUAL_EFFICIENCY: Fraction = 0.88;

const tiers: Readonly<Record<string, Readonly<Record<string, readonly TierPoint[]>>>> = supplyTiers;

const wallForm = z
  .strictObject({
    reading: positive(written.power),
    efficiency: bounded(
      written.percent,
      'more than 0 %, at most 100 %',
      (share) => share > 0 && share <= 1,
    ).optional(),
    tier: z.enum(['base', 'bronze', 'silver', 'gold', 'platinum', 'titanium']).optional(),
    mains: z.enum(['115 V', '230 V', '230 V redundant']).default('230 V'),
    rating: positive(written.power).optional(),
    useful: notNegative(written.power).default(0),
  })
  .superRefine(({ efficiency, tier, mains, rating, reading, useful }, context) => {
    const refuse = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (efficiency !== undefined && tier !== undefined) {
      refuse('tier', 'give the efficiency or the tier, not both');
    }
    if (tier !== undefined && rating === undefined) {
      refuse('tier', 'the efficiency of a tier depends on the load: give the rating as well');
    }
    if (tier !== undefined && !tiers[mains]?.[tier]) refuse('tier', `there is no tier "${tier}" at ${mains}`);
    if (useful >= reading) refuse('useful', 'more leaves as useful output than the wall gives');
  })
  .meta({
    description:
      'reading of the wall meter at full heat, mean of ten minutes; efficiency, or tier with mains and rating; ' +
      'useful output that leaves the box as electricity, sound or light',
  });

/** Form of the entry of `heat` that is the supply: its heat is what it loses at a wall reading. */
export const supplyPartForm = z
  .strictObject({
    part: name,
    wall: wallForm,
    on: name.optional(),
    in: name.optional(),
    fixed: notNegative(written.thermalResistance).default(0),
    limit: limitForm.optional(),
  })
  .superRefine((part, context) => {
    if ((part.on === undefined) !== (part.in === undefined)) return;
    context.addIssue({ code: 'custom', path: part.in === undefined ? [] : ['in'], message: ONE_SEAT });
  });

/** What is written under `wall`, as the form gives it. */
export type WallFields = z.output<typeof wallForm>;

function efficiencyOf({ efficiency, tier, mains, rating }: WallFields): SupplyEfficiency {
  const points = tier === undefined ? undefined : tiers[mains]?.[tier];
  if (points && rating !== undefined) return { kind: 'tier', tier: points, rating };
  return { kind: 'number', efficiency: efficiency ?? USUAL_EFFICIENCY };
}

function stateOf(wall: WallFields): SupplyState {
  return supplyAt(wall.reading, efficiencyOf(wall));
}

/** What a supply makes of heat itself, and what it was seen to give. */
export function supplyOf(wall: WallFields): { readonly power: Watts; readonly supply: SupplyReading } {
  const { loss, output } = stateOf(wall);
  const { rating } = wall;
  return { power: loss, supply: { output, ...(rating === undefined ? {} : { rating }) } };
}

/**
 * Refuses a wall reading that the powers of the parts do not add up to, and a second supply.
 *
 * @param walls fields of the supplies with their indices in `heat`
 * @param parts as read, in the order of the file
 * @param findings receives what is wrong
 */
export function checkWalls(
  walls: ReadonlyMap<number, WallFields>,
  parts: readonly (Part | undefined)[],
  findings: Findings,
): void {
  const [first, second] = [...walls];
  if (second) {
    const message = 'only one part can be the supply';
    findings.push({ code: 'conflict', path: ['heat', second[0], 'wall'], at: 'key', message });
    return;
  }
  const read = parts.filter((part) => part !== undefined);
  if (!first || read.length < parts.length) return;
  const [index, wall] = first;
  const loads = read.reduce((sum, part) => sum + (part.supply ? 0 : part.power), 0);
  const expected = heatOfLoads(stateOf(wall), wall.useful);
  if (Math.abs(loads - expected) <= WALL_AGREEMENT * expected) return;
  const watts = (value: Watts) => roundedQuantity('power', value, 3);
  const where = read[index]?.seat.kind === 'chamber' && read[index].seat.chamber === OUTSIDE;
  findings.push({
    code: 'conflict',
    path: ['heat', index, 'wall', 'reading'],
    at: 'value',
    message: `the parts ${where ? '' : 'beside the supply '}do not make the heat that this reading stands for`,
    found: `${watts(loads)} of all parts`,
    expected: `${watts(expected)}, within ${roundedQuantity('percent', WALL_AGREEMENT, 2)}`,
  });
}
