import { bankWords } from '../enclosure/bank-words.ts';
import type { Bank, LostThere, NamedBuild, Place } from '../enclosure/enclosure.ts';
import type { LostFans } from '../fan/mixed-bank.ts';
import { describeValue } from '../quantities/written.ts';
import { entriesOf, type Findings, isMap } from './findings.ts';
import { missing } from './form-issues.ts';
import { valueAt } from './form-tree.ts';
import { oneOf } from './issue-words.ts';
import { lostWordsIn } from './lost-words.ts';
import { unknownName } from './name-findings.ts';
import type { Path } from './problem.ts';

/** What builds refer to. */
export interface BuildContext {
  readonly placeNames: readonly string[];
  readonly places: ReadonlyMap<string, Place>;
  /** `choices` as written: a choice of one field lets a build name the bare value. */
  readonly choices: unknown;
}

/**
 * Reads `builds`.
 *
 * @param value as written
 * @param context places and choices
 * @param findings receives what is wrong
 */
export function readBuilds(value: unknown, context: BuildContext, findings: Findings): readonly NamedBuild[] {
  return entriesOf(value, ['builds'], findings).map(([id, given]) => {
    const path = ['builds', id];
    const entries = new Map(entriesOf(given, path, findings));
    for (const name of entries.keys()) {
      if (context.placeNames.length === 0 || context.placeNames.includes(name)) continue;
      findings.push(unknownName('element', name, context.placeNames, [...path, name], 'key'));
    }
    if (!isMap(given)) return { id, options: [] };
    const lost: LostThere[] = [];
    const options = context.placeNames.map((name, index) => {
      const place = context.places.get(name);
      const written = entries.get(name);
      if (place?.kind !== 'bank' || typeof written !== 'string') {
        return place ? readOption(place, written, [...path, name], context, findings) : 0;
      }
      const words = lostWordsIn(written);
      const before = findings.length;
      const option = readOption(place, words.option, [...path, name], context, findings);
      if (words.lost && findings.length === before) {
        checkLost(place.options[option] ?? null, words.lost, [...path, name], findings);
        lost.push({ place: index, ...words.lost });
      }
      return option;
    });
    return lost.length > 0 ? { id, options, lost } : { id, options };
  });
}

function checkLost(bank: Bank | null, { dead, missing }: LostFans, path: Path, findings: Findings): void {
  const count = bank?.count ?? 0;
  if (dead + missing <= count) return;
  const message = count === 0 ? 'an empty place has no fans to lose' : `there are only ${count} fans to lose`;
  findings.push({ code: 'conflict', path, at: 'value', message });
}

function readOption(
  place: Place,
  given: unknown,
  path: Path,
  context: BuildContext,
  findings: Findings,
): number {
  const words = wordsOf(place, context.choices);
  const known = words.map(([best = '']) => best);
  if (given === undefined) {
    if (words.length > 1) findings.push(missing(oneOf(known), path));
    return 0;
  }
  if (place.kind === 'element' && place.options.length === 1 && place.options[0]?.label === '') {
    const message = `there is no choice for "${place.id}", so a build need not name it`;
    findings.push({ code: 'conflict', path, at: 'key', message });
    return 0;
  }
  const text = isMap(given) ? '' : squeezed(describeValue(given));
  const option = words.findIndex((spellings) => spellings.some((spelling) => squeezed(spelling) === text));
  if (option >= 0) return option;
  findings.push(unknownName('option', describeValue(given), known, path));
  return 0;
}

/** Spellings of each option of a place, the best one first. */
function wordsOf(place: Place, choices: unknown): readonly (readonly string[])[] {
  if (place.kind === 'bank') {
    return place.options.map((option) => {
      const words = bankWords(option);
      return option?.count === 1 ? [words, option.fan.id] : [words];
    });
  }
  const choice = valueAt(choices, [place.id]);
  const fields = isMap(choice) ? Object.keys(choice) : [];
  const prefix = fields.length === 1 ? `${fields[0]} ` : undefined;
  return place.options.map(({ label }) => {
    const bare = prefix !== undefined && label.startsWith(prefix);
    return bare ? [label, label.slice(prefix.length)] : [label];
  });
}

/** Spaces and the kind of cross do not tell options apart. */
function squeezed(text: string): string {
  return text.replace(/\s+/g, '').replace(/×/g, 'x');
}
