import type { WrittenMap } from '../findings.ts';
import { inlineYaml, scalarYaml } from '../round-trip/inline-yaml.ts';

function fanLines(fan: WrittenMap): readonly string[] {
  return Object.entries(fan).flatMap(([key, value], index) => {
    const lead = index === 0 ? '  - ' : '    ';
    if (key === 'curve' && typeof value === 'object' && value !== null) {
      const points = Object.entries(value).map(([name, list]) => `      ${name}: ${scalarYaml(list)}`);
      return [`${lead}curve:`, ...points];
    }
    return [`${lead}${key}: ${inlineYaml(value)}`];
  });
}

/**
 * A family of fans as the text of a catalog.
 *
 * @param family name
 * @param fans as maps of what is to be written, at least one
 */
export function familyText(family: string, fans: readonly WrittenMap[]): string {
  const origins = new Set(fans.map((fan) => fan['provenance']));
  const [only = 'box'] = origins;
  const shared = origins.size === 1 ? only : 'box';
  const shown = fans.map((fan) => {
    const { provenance, ...rest } = fan;
    return provenance === shared ? rest : fan;
  });
  return `${[`family: ${scalarYaml(family)}`, `provenance: ${scalarYaml(shared)}`, 'fans:', ...shown.flatMap(fanLines)].join('\n')}\n`;
}
