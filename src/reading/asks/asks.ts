import { z } from 'zod';
import type { Asks, DepthAsk } from '../../enclosure/asks.ts';
import type { Leg, Place } from '../../enclosure/enclosure.ts';
import type { Metres } from '../../quantities/dimensions.ts';
import { bounded, positive, written } from '../../quantities/written.ts';
import { check, type Findings } from '../findings.ts';
import { name } from '../name.ts';
import { unknownName } from '../name-findings.ts';

/** Most points of tone risk there are [-]. */
const MOST_TONE_POINTS = 6;

const depth = positive(written.length);

/** Form of `ask`: what is asked of a build beside its limits. */
export const askForm = z.strictObject({
  price: written.price.optional(),
  'fan-power': positive(written.power).optional(),
  models: written.count.optional(),
  depth: z.union([depth, z.record(name, depth)]).optional(),
  level: bounded(
    written.level,
    'a level from -20 dB(A) to 120 dB(A)',
    (level) => level >= -20 && level <= 120,
  ).optional(),
  'dead-fan': z.literal('survived').optional(),
  stall: z.literal('never').optional(),
  'back-flow': z.literal('never').optional(),
  'tone-points': bounded(
    written.factor,
    'a whole number from 0 to 6',
    (points) => Number.isInteger(points) && points >= 0 && points <= MOST_TONE_POINTS,
  ).optional(),
});

/** What `ask` refers to. */
export interface AskContext {
  /** In order; undefined where one could not be read. */
  readonly legs: readonly (Leg | undefined)[];
  readonly placeNames: readonly string[];
  readonly places: ReadonlyMap<string, Place>;
}

/** Legs with places for fans, with their numbers. */
function fanLegs({ legs, placeNames, places }: AskContext): readonly { id: string; leg: number }[] {
  return legs.flatMap((leg, index) => {
    const holdsFans = leg?.through.some((at) => places.get(placeNames[at] ?? '')?.kind === 'bank');
    return leg && holdsFans ? [{ id: leg.id, leg: index }] : [];
  });
}

function depthsOf(
  given: Metres | Readonly<Record<string, Metres>>,
  context: AskContext,
  findings: Findings,
): readonly DepthAsk[] {
  const known = fanLegs(context);
  if (typeof given === 'number') return known.map(({ leg }) => ({ leg, most: given }));
  return Object.entries(given).flatMap(([id, most]) => {
    const found = known.find((each) => each.id === id);
    if (found) return [{ leg: found.leg, most }];
    const names = known.map((each) => each.id);
    // Without any leg that could be read the names cannot be judged.
    if (names.length > 0) findings.push(unknownName('leg with fans', id, names, ['ask', 'depth', id], 'key'));
    return [];
  });
}

/**
 * Reads `ask`; without it nothing is asked beside the limits.
 *
 * @param value as written
 * @param context what it refers to
 * @param findings receives what is wrong
 */
export function readAsks(value: unknown, context: AskContext, findings: Findings): Asks | undefined {
  const fields = value === undefined ? undefined : check(askForm, value, ['ask'], findings);
  if (!fields) return undefined;
  const { price, models, depth: depths, level } = fields;
  const power = fields['fan-power'];
  const points = fields['tone-points'];
  return {
    ...(price === undefined ? {} : { price }),
    ...(power === undefined ? {} : { ratedPower: power }),
    ...(models === undefined ? {} : { models }),
    ...(depths === undefined ? {} : { depths: depthsOf(depths, context, findings) }),
    ...(level === undefined ? {} : { level }),
    ...(fields['dead-fan'] ? { deadFan: true } : {}),
    ...(fields.stall ? { noStall: true } : {}),
    ...(fields['back-flow'] ? { noBackFlow: true } : {}),
    ...(points === undefined ? {} : { tonePoints: points }),
  };
}
