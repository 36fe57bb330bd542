import { bend } from './bend.ts';
import { duct } from './duct.ts';
import type { ElementKind } from './element.ts';
import { filter } from './filter.ts';
import { fins } from './fins.ts';
import { givenLoss } from './given-loss.ts';
import { guard } from './guard.ts';
import { louvre } from './louvre.ts';
import { orifice } from './orifice.ts';
import { passage } from './passage.ts';
import { perforated } from './perforated.ts';
import { points } from './points.ts';
import { powerLaw } from './power-law.ts';
import { screen } from './screen.ts';
import { sink } from './sink.ts';
import { slot } from './slot.ts';
import { step } from './step.ts';

/** All kinds of elements that a scenario may name, in the order of help texts. */
export const elementKinds: readonly ElementKind[] = [
  perforated,
  screen,
  filter,
  guard,
  louvre,
  slot,
  orifice,
  duct,
  bend,
  step,
  passage,
  fins,
  sink,
  givenLoss,
  points,
  powerLaw,
];
