import type { Part, Skin } from '../../src/enclosure/enclosure.ts';
import { between, chance, logBetween, oneOf, type Random, wholeBetween } from '../airway/seeded-random.ts';
import type { Dress } from './dressed.ts';
import type { Drawing } from './hand-made.ts';

function randomPart(random: Random, onFins: boolean, power: number): Partial<Part> {
  const side = between(random, 0.02, 0.1);
  const share = between(random, 0.2, 1);
  const footprint = { width: side * share, height: side * share };
  const fields: Partial<Part>[] = [
    chance(random, 0.3)
      ? { slope: 0, leakage: { power: power * between(random, 0.05, 0.5), growth: 0.015 } }
      : {},
    chance(random, 0.3) ? { paste: { thickness: 5e-5, conductivity: 4, area: 3e-4 } } : {},
    onFins && chance(random, 0.4)
      ? {
          pipes: {
            count: wholeBetween(random, 1, 5),
            capacity: logBetween(random, 10, 60),
            resistance: 0.06,
          },
        }
      : {},
    onFins && chance(random, 0.5)
      ? {
          base: {
            footprint,
            plate: { width: side, height: side },
            thickness: between(random, 0.001, 0.008),
            conductivity: oneOf(random, [200, 390]),
          },
          probe: between(random, 0, 1),
        }
      : {},
    chance(random, 0.5) ? { limits: [{ of: oneOf(random, onFins ? KINDS : INSIDE), temperature: 345 }] } : {},
  ];
  return Object.assign({}, ...fields);
}

const KINDS = ['part', 'air', 'probe'] as const;
const INSIDE = ['part', 'air'] as const;

/** Pipes, bases, paste, leakage, limits and walls for a drawing. All invented. */
export function randomDress(random: Random, drawing: Drawing): Dress {
  const skins: Skin[] = Array.from({ length: drawing.inner }, (_, index) => ({
    chamber: index + 1,
    conductance: chance(random, 0.5) ? between(random, 0, 3) : 0,
    share: between(random, 0, 1),
    ...(chance(random, 0.3) ? { limit: 320 + between(random, 0, 10) } : {}),
  }));
  return {
    parts: (drawing.parts ?? []).map((part) => randomPart(random, part.on !== undefined, part.power)),
    ...(chance(random, 0.5) ? { skins } : {}),
  };
}
