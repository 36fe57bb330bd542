import { z } from 'zod';
import { notNegative, written } from '../quantities/written.ts';
import { askForm } from './asks/asks.ts';
import { headersForm } from './asks/headers.ts';
import { assumeForm } from './assume.ts';
import { bankChoiceForm } from './bank-fields.ts';
import { dutyForm } from './duties.ts';
import { elementForm } from './element-fields.ts';
import { airwayForm } from './legs.ts';
import { name } from './name.ts';
import { heatEntryForm } from './parts.ts';
import { readingForm } from './readings.ts';
import { listenerForm, siteForm } from './site.ts';
import { skinsForm } from './skins.ts';
import { uncertaintyForm } from './uncertainty.ts';

/** Form of `title`. */
export const titleForm = z.string().min(1).max(200);

/** Form of `margin`. */
export const marginForm = notNegative(written.temperatureDifference);

/** Lists of values for fields of an element, or whole elements under the key "element". */
const elementChoiceForm = z.record(name, z.array(z.unknown()).min(1));

const word = z.union([z.string(), z.number()]);

/**
 * Form of a whole scenario file, for its keys and for editors. The values are read section by section, since
 * what a choice or a build may hold depends on the elements.
 */
export const scenarioForm = z.strictObject({
  title: titleForm.optional(),
  site: siteForm,
  listener: listenerForm,
  heat: z.array(heatEntryForm).min(1),
  skin: skinsForm.optional(),
  airway: airwayForm,
  elements: z.record(name, elementForm),
  choices: z.record(name, z.union([bankChoiceForm, elementChoiceForm])).optional(),
  duties: z.array(dutyForm).min(1).optional(),
  builds: z.record(name, z.record(name, word)).optional(),
  readings: z.array(readingForm).min(1).optional(),
  margin: marginForm.optional(),
  ask: askForm.optional(),
  headers: headersForm.optional(),
  uncertainty: uncertaintyForm.optional(),
  assume: assumeForm,
});
