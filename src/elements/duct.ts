import { z } from 'zod';
import type { Metres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { ductFriction } from './duct-friction.ts';
import { elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';

/**
 * Loss where a duct begins, in heads of its own velocity [-]. Source: Idelchik, Handbook of Hydraulic Resistance,
 * 3rd ed., diagrams 3-1 and 3-4 (from memory): edge flush with a wall, thin pipe standing out, edge rounded by 0.2
 * diameters or more.
 */
const entryLosses = { none: 0, sharp: 0.5, projecting: 1, rounded: 0.03 } as const;
/** Loss where a duct ends in a large space: all of its velocity head. Source: momentum balance (Borda & Carnot). */
const exitLosses = { none: 0, free: 1 } as const;

interface DuctFields {
  readonly duct: Field;
  readonly length: Metres;
  readonly entry: keyof typeof entryLosses;
  readonly exit: keyof typeof exitLosses;
}

/** Straight duct, channel or gap: `{ duct: 100 x 50 mm, length: 300 mm, entry: sharp, exit: free }`. */
export const duct = elementKind({
  key: 'duct',
  summary: 'straight rectangular duct, channel or gap: length, entry, exit',
  source:
    'Shah & London (1978) with the composite of Muzychka & Yovanovich for the developing profile; Churchill (1977); ' +
    'Jones (1976); entry and exit by Idelchik, 3rd ed., diagrams 3-1 and 3-4 (all from memory)',
  form: z.strictObject({
    duct: positive(written.rectangle),
    length: positive(written.length),
    entry: z.enum(['none', 'sharp', 'projecting', 'rounded']).default('none'),
    exit: z.enum(['none', 'free']).default('none'),
  }),
  build: ({ duct: field, length, entry, exit }: DuctFields) => {
    const area = field.width * field.height;
    return {
      viscous: 0,
      inertial: (entryLosses[entry] + exitLosses[exit]) / (2 * area * area),
      faint: 0,
      law: ductFriction({ ...field, length }),
      freeArea: area,
      lossUncertainty: 0.15,
      remarks: [],
    };
  },
});
