import type { ComparedVariant, Comparison } from '../../questions/compare/compare.ts';
import type { OperatingState } from '../../questions/operating-state.ts';
import { type CsvCell, toCsv } from '../csv.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { kelvinData } from '../tellable.ts';
import { operatingData, orNull } from './state-data.ts';

function variantData({ name, needs, stack, k, full, equalLevel, equalMargin }: ComparedVariant): Json {
  return {
    variant: name,
    needs,
    fansDepth_m: stack.fans,
    depthLeft_m: stack.left,
    k: k ?? null,
    full: operatingData(full),
    equalLevel: equalLevel ? operatingData(equalLevel) : null,
    equalMargin: equalMargin ? operatingData(equalMargin) : null,
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
  const { duty, variants, level, margin, measure, best, flips } = comparison;
  const result = {
    title,
    duty,
    level_dBA: orNull(level),
    margin_K: kelvinData(margin),
    measure,
    best: variants[best]?.name ?? null,
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

function cells(name: string, how: string, state: OperatingState | null): readonly CsvCell[] {
  return [
    name,
    how,
    orNull(state?.ratios[0]),
    orNull(state?.level),
    orNull(state?.flow),
    orNull(state?.massFlow),
    orNull(state?.tightest?.margin),
    orNull(state?.fanPower),
  ];
}

/**
 * A comparison as comma-separated values, in SI: three rows a variant.
 *
 * @param comparison the answer
 */
export function compareCsv({ variants }: Comparison): string {
  const heads = [
    'variant',
    'compared',
    'speed [1]',
    'level [dB(A)]',
    'flow [m3/s]',
    'mass flow [kg/s]',
    'margin [K]',
    'fan power [W]',
  ];
  return toCsv(
    heads,
    variants.flatMap(({ name, full, equalLevel, equalMargin }) => [
      cells(name, 'full speed', full),
      cells(name, 'equal level', equalLevel),
      cells(name, 'equal margin', equalMargin),
    ]),
  );
}
