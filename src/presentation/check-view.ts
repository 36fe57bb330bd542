import type { Enclosure } from '../enclosure/enclosure.ts';
import { askWords, headerWords } from './asks/ask-words.ts';
import { count } from './figures.ts';
import type { Paint } from './paint.ts';
import { printable } from './printable.ts';

/** How a scenario without problems is shown. */
export interface CheckViewOptions {
  /** Name of its file. */
  readonly file: string;
  readonly paint: Paint;
}

/**
 * What a scenario without problems holds, in a few lines.
 *
 * @param enclosure the scenario
 * @param space builds in its space [-]
 * @param options name of the file and paint
 */
export function checkView(enclosure: Enclosure, space: number, { file, paint }: CheckViewOptions): string {
  const names = (items: readonly { readonly id: string }[]): string =>
    items.map(({ id }) => printable(id)).join(', ');
  const choices = enclosure.places
    .filter(({ options }) => options.length > 1)
    .map(({ id, options }) => `${printable(id)} ${count(options.length)}`);
  const headers = headerWords(enclosure);
  const asked = askWords(enclosure);
  return [
    `${paint.good('no problems')} in ${printable(file)}: ${printable(enclosure.title)}`,
    `  parts     ${names(enclosure.parts)}`,
    `  legs      ${names(enclosure.legs)}`,
    `  duties    ${names(enclosure.duties)}`,
    `  choices   ${choices.length > 0 ? choices.join(', ') : 'none'}`,
    ...(headers.length > 0 ? [`  headers   ${headers.join(', ')}`] : []),
    ...(asked.length > 0 ? [`  asked     ${asked.join(', ')}`] : []),
    `  builds    ${count(space)} in the space`,
    '',
  ].join('\n');
}
