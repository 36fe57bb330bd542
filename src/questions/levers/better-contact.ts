import type { Part } from '../../enclosure/enclosure.ts';
import type { Fraction } from '../../quantities/dimensions.ts';
import type { Change, Lever, Situation } from './lever.ts';

/** What is left of a resistance after one step: half (assumption). */
const LEFT: Fraction = 0.5;

function contactChange({ enclosure, build }: Situation, index: number, part: Part, what: string): Change {
  const notes = [
    'paste, a pad, screws or a base that conduct that much better; try them before you count on it.',
  ];
  return {
    at: part.id,
    what,
    notes,
    enclosure: { ...enclosure, parts: enclosure.parts.with(index, part) },
    build,
  };
}

function changesOf(situation: Situation, index: number, strength: number): readonly Change[] {
  const part = situation.enclosure.parts[index];
  if (!part) return [];
  const left = LEFT ** strength;
  const share = `${Number((100 * left).toFixed(1))} %`;
  const { paste, resistance } = part;
  const better: Change[] = [];
  if (paste) {
    const thin = { ...part, paste: { ...paste, thickness: left * paste.thickness } };
    better.push(contactChange(situation, index, thin, `${share} of the paste's resistance`));
  }
  if (resistance > 0) {
    const words = part.seat.kind === 'fins' ? `${share} of what lies between it and the fins` : undefined;
    const less = { ...part, resistance: left * resistance };
    better.push(contactChange(situation, index, less, words ?? `${share} of its resistance to the air`));
  }
  return better;
}

/** Less resistance between parts that have limits and what cools them. */
export const betterContact: Lever = {
  name: 'better contact',
  eases: 'by contact',
  isFan: false,
  effort: 'cut',
  changes: (situation, strength) =>
    situation.enclosure.parts.flatMap(({ limits, pipes }, index) =>
      limits.length > 0 || pipes ? changesOf(situation, index, strength) : [],
    ),
};
