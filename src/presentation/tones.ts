import type { DutyOutcome } from '../enclosure/outcome.ts';
import type { BankTone, BeatOutcome } from '../enclosure/sound-outcome.ts';
import { type Column, numberColumn, textColumn } from './column.ts';
import { KEEP } from './column-fit.ts';
import { fixed, NONE, quantity } from './figures.ts';

/** Seconds in a minute, and the step to which speeds are rounded [rpm]. */
const MINUTE = 60;
const STEP = 10;
/** No fan has fewer blades [-]. Common practice, no source. */
const FEWEST_BLADES = 3;

const risks: Readonly<Record<BankTone['risk'], string>> = {
  low: 'low',
  medium: 'medium',
  high: 'high: may be felt as 3 dB more',
};

/** Tone of the blades of each bank that turns, and the risk that it stands out; points are of six. */
export function toneTable({ sound }: DutyOutcome): readonly Column[] {
  const { banks } = sound.tones;
  return [
    textColumn('Tones', KEEP, banks, ({ place }) => place),
    numberColumn('Blade pass', 'Hz', KEEP + 1, banks, ({ bladePass }) =>
      bladePass === undefined ? NONE : fixed(bladePass, 0),
    ),
    numberColumn('Points', '', 20, banks, ({ points }) => fixed(points, 0)),
    textColumn('Risk', KEEP + 2, banks, ({ risk }) => risks[risk]),
  ];
}

/**
 * Beats that are heard as fluctuation, each with what would end it, in numbers.
 *
 * @param duty of a build
 */
export function beatSentences({ sound }: DutyOutcome): readonly string[] {
  return sound.tones.beats.map((beat) =>
    beat.places[0] === beat.places[1] ? insideWords(beat) : betweenWords(beat),
  );
}

function insideWords(beat: BeatOutcome): string {
  const [place] = beat.places;
  const lock = `within ${fixed(beat.lockWithin * MINUTE, 1)} rpm of each other`;
  return (
    `The fans of ${place} may beat, ${rangeWords(beat)}. Hold them ${lock}, ` +
    `run one at least ${roundedUp(beat.runApart)} rpm apart, or give one ${bladeWords(beat)}.`
  );
}

function betweenWords(beat: BeatOutcome): string {
  const [first, second] = beat.places;
  const lock = `Hold ${second} within ${fixed(beat.lockWithin * MINUTE, 1)} rpm of ${quantity('rpm', beat.lockAt)}`;
  const apart = `keep it out of ${roundedDown(beat.avoid.from)} to ${roundedUp(beat.avoid.to)} rpm`;
  return (
    `${first} and ${second} may beat, ${rangeWords(beat)}, ${fixed(beat.nominal, 1)} Hz at these speeds. ` +
    `${lock}, ${apart}, or give it a fan with ${bladeWords(beat)}.`
  );
}

function rangeWords({ expected, peak }: BeatOutcome): string {
  return (
    `${fixed(expected.from, 1)} to ${fixed(expected.to, 1)} Hz as speeds of real fans differ, ` +
    `up to ${fixed(peak, 1)} dB over the louder tone`
  );
}

function bladeWords({ blades }: BeatOutcome): string {
  const more = `${fixed(blades.least, 0)} blades or more`;
  return blades.most < FEWEST_BLADES ? more : `${fixed(blades.most, 0)} blades or fewer, or ${more}`;
}

function roundedUp(speed: number): string {
  return fixed(STEP * Math.ceil((speed * MINUTE) / STEP), 0);
}

function roundedDown(speed: number): string {
  return fixed(STEP * Math.floor((speed * MINUTE) / STEP), 0);
}
