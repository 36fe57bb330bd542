import { z } from 'zod';

/** Letters that would break a line, move a cursor or hide in a table. */
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;

/** A name the user chooses: any text of one line, for example "hot day". */
export const name = z
  .string()
  .min(1)
  .max(60)
  .refine((text) => !UNPRINTABLE.test(text), { error: 'a name is one line of ordinary letters' })
  // Maps by name, as forms make them, cannot hold it.
  .refine((text) => text !== '__proto__', { error: 'this name is reserved' })
  .meta({ description: 'a name of your choice' });

/** Some names, as in a list of elements. */
export const names = z.array(name);
