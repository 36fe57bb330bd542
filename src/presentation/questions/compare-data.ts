import type { ComparedVariant, Comparison, Way } from '../../questions/compare/compare.ts';
import type { Sureness } from '../../questions/compare/sureness.ts';
import { bandData } from '../bands/band-data.ts';
import { type CsvCell, toCsv } from '../csv.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { kelvinData } from '../tellable.ts';
import { operatingData, orNull } from './state-data.ts';

function sureData(found: Sureness | null): Json {
  if (!found) return null;
  const { level, holding, quieter } = found;
  return {
    level_dBA: bandData(level),
    holding,
    quieter: quieter ? { probability: quieter.probability, standing: quieter.standing } : null,
  };
}

function wayData(variant: ComparedVariant, way: Way): Json {
  const state = variant[way];
  return state && { ...operatingData(state), sure: sureData(variant.sure[way]) };
}

function variantData(variant: ComparedVariant): Json {
  const { name, needs, stack, k } = variant;
  return {
    variant: name,
    needs,
    fansDepth_m: stack.fans,
    depthLeft_m: stack.left,
    k: k ?? null,
    full: wayData(variant, 'full'),
    equalLevel: wayData(variant, 'equalLevel'),
    equalMargin: wayData(variant, 'equalMargin'),
  };
}

/**
 * A comparison as a document.
 *
 * @param title of the scenario
 * @param comparison the answer
 * @param meta version, command and warnings
 */
export function compareDocument(title: string, comparison: Comparison, meta: Meta): Document {
  const { duty, variants, level, margin, measure, best, against, flips } = comparison;
  const result = {
    title,
    duty,
    level_dBA: orNull(level),
    margin_K: kelvinData(margin),
    measure,
    best: variants[best]?.name ?? null,
    against: variants[against]?.name ?? null,
    flips: flips.map(({ factor, k, then, harder }) => ({
      factor,
      k: k ?? null,
      best: variants[then]?.name ?? null,
      harder,
    })),
    variants: variants.map(variantData),
  };
  return documentOf(result, meta);
}

/** How each way of comparing is named in a row. */
const ways = { full: 'full speed', equalLevel: 'equal level', equalMargin: 'equal margin' } as const;

function cells(variant: ComparedVariant, way: Way, other: string | null): readonly CsvCell[] {
  const state = variant[way];
  const sure = variant.sure[way];
  return [
    variant.name,
    ways[way],
    orNull(state?.ratios[0]),
    orNull(state?.level),
    orNull(state?.flow),
    orNull(state?.massFlow),
    orNull(state?.tightest?.margin),
    orNull(state?.fanPower),
    orNull(sure?.level.low),
    orNull(sure?.level.high),
    orNull(sure?.holding),
    orNull(sure?.quieter?.probability),
    sure?.quieter?.standing ?? null,
    sure?.quieter ? other : null,
  ];
}

/**
 * A comparison as comma-separated values, in SI: three rows a variant.
 *
 * @param comparison the answer
 */
export function compareCsv({ variants, against }: Comparison): string {
  const other = variants[against]?.name ?? null;
  const heads = [
    'variant',
    'compared',
    'speed [1]',
    'level [dB(A)]',
    'flow [m3/s]',
    'mass flow [kg/s]',
    'margin [K]',
    'fan power [W]',
    'level from [dB(A)]',
    'level to [dB(A)]',
    'limits hold [1]',
    'quieter [1]',
    'standing',
    'against',
  ];
  return toCsv(
    heads,
    variants.flatMap((variant) => [
      cells(variant, 'full', other),
      cells(variant, 'equalLevel', other),
      cells(variant, 'equalMargin', other),
    ]),
  );
}
