import { z } from 'zod';
import { elementKinds } from '../../elements/kinds.ts';
import { ASSUMPTIONS } from '../../enclosure/assumptions.ts';
import { familyForm } from '../fan-form.ts';
import { valueAt } from '../form-tree.ts';
import { hearingFields } from '../hearing.ts';
import { scenarioForm } from '../scenario-form.ts';
import { stockForm } from '../stock/stock-file.ts';
import { STOCK_KEY } from '../stock/stock-item.ts';
import { CATALOG_WORDS } from './catalog-words.ts';
import { ELEMENT_WORDS } from './element-words.ts';
import { SCENARIO_WORDS } from './scenario-words.ts';
import { branchesIn, eachKey, isPart, propertiesOf, type SchemaPart } from './schema-tree.ts';

/** Files an editor can be told about. */
export const SCHEMA_NAMES = ['scenario', 'catalog'] as const;
export type SchemaName = (typeof SCHEMA_NAMES)[number];

const kindKeys = ['bank', ...elementKinds.map(({ key }) => key)];

/** What is written, not what becomes of it; draft 7 is what editors know best. */
function schemaOf(form: z.ZodType): SchemaPart {
  return { ...z.toJSONSchema(form, { io: 'input', target: 'draft-7' }) };
}

/** The key that tells what an element is. */
function kindOf(branch: SchemaPart): string {
  const keys = propertiesOf(branch).map(([key]) => key);
  const required = Array.isArray(branch['required']) ? branch['required'] : [];
  return kindKeys.find((key) => keys.includes(key) && required.includes(key)) ?? '';
}

/** Puts the words of a key before what its form says of the value. */
function describeKey(part: SchemaPart, words: string | undefined): void {
  if (words === undefined) return;
  const own = typeof part['description'] === 'string' ? part['description'] : '';
  const value = own === '' || own === 'a name of your choice' || own === words ? '' : `\n\nValue: ${own}.`;
  part['description'] = `${words}${value}`;
}

/** Words for a number of the model: its default. */
function assumptionWords(path: string): string | undefined {
  const [section, ...keys] = path.split('.');
  if (section !== 'assume' || keys.length < 2) return undefined;
  const camel = keys.map((key) => key.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase()));
  const byKey = valueAt(ASSUMPTIONS, camel) ?? valueAt(ASSUMPTIONS, keys);
  const plain = typeof byKey === 'number' || typeof byKey === 'string';
  return plain ? `Rests on judgement; ${byKey} if not said.` : 'Rests on judgement.';
}

/** Elements may call for stock, which settles some of their fields, and say how their place lies to the listener. */
function openElements(elements: SchemaPart): void {
  const heard = propertiesOf(schemaOf(z.strictObject(hearingFields)));
  const values = elements['additionalProperties'];
  for (const branch of isPart(values) ? branchesIn(values) : []) {
    const kind = kindOf(branch);
    const properties = branch['properties'];
    if (kind === 'bank' || !isPart(properties)) continue;
    for (const [key, part] of heard) properties[key] ??= part;
    properties[STOCK_KEY] = { type: 'string' };
    const required = branch['required'];
    branch['required'] = [kind];
    branch['if'] = { required: [STOCK_KEY] };
    branch['else'] = { required };
  }
}

/** The JSON Schema of a scenario file, with words on every key. */
export function scenarioSchema(): SchemaPart {
  const schema = schemaOf(scenarioForm);
  const properties = new Map(propertiesOf(schema));
  const elements = properties.get('elements');
  if (elements) openElements(elements);
  eachKey(schema, '', (part, path, branch) => {
    const [section, key = ''] = path.split('.');
    if (section === 'elements' && key !== '') {
      describeKey(part, ELEMENT_WORDS[`${kindOf(branch)}.${key}`] ?? ELEMENT_WORDS[key]);
    } else describeKey(part, SCENARIO_WORDS[path] ?? assumptionWords(path));
  });
  return { ...schema, title: 'hushwright scenario' };
}

/** The JSON Schema of a catalog file, of fans or of stock, with words on every key. */
export function catalogSchema(): SchemaPart {
  const schema = schemaOf(z.union([familyForm, stockForm]));
  eachKey(schema, '', (part, path) => describeKey(part, CATALOG_WORDS[path]));
  return { ...schema, title: 'hushwright catalog' };
}

/**
 * A schema as the text of a file.
 *
 * @param name which
 */
export function schemaText(name: SchemaName): string {
  return `${JSON.stringify(name === 'scenario' ? scenarioSchema() : catalogSchema(), null, 1)}\n`;
}
