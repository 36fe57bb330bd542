/** Text that needs no quotation marks, neither in a line of its own nor between braces. */
const PLAIN = /^[A-Za-z0-9](?:[\w .%²³/°()+-]*[\w%²³/°)])?$/;
/** Words and numbers YAML takes for something else than text. */
const TAKEN = /^(?:true|false|null|yes|no|on|off|~|[\d.+-]+(?:e[\d+-]+)?|0x[\da-f]+)$/i;

/**
 * A text or a number as YAML, in quotation marks if it needs them.
 *
 * @param value text or a number
 */
export function scalarYaml(value: unknown): string {
  if (typeof value === 'number') return String(value);
  const text = String(value);
  return PLAIN.test(text) && !TAKEN.test(text) ? text : JSON.stringify(text);
}

/**
 * A value as YAML on one line.
 *
 * @param value text, number, list or map of such
 */
export function inlineYaml(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inlineYaml).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).map(([key, inner]) => `${scalarYaml(key)}: ${inlineYaml(inner)}`);
    return `{ ${entries.join(', ')} }`;
  }
  return scalarYaml(value);
}
