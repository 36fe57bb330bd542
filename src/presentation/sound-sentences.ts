import type { Stand } from '../enclosure/hearing.ts';
import type { DutyOutcome } from '../enclosure/outcome.ts';
import type {
  BackgroundOutcome,
  DecibelCost,
  RoomOutcome,
  SoundOutcome,
  SpectrumOutcome,
} from '../enclosure/sound-outcome.ts';
import { type Audibility, BEDROOM_GUIDELINE } from '../sound/audibility.ts';
import { fixed, levelText, levelWords, quantity } from './figures.ts';

/** Share of the sound from which on a spectrum counts as assumed [-]: below, it moves no figure by 0.5 dB. */
const ASSUMED_FROM = 0.1;

/** What each band of levels is like. None of them says whether the sound is heard: that takes a background. */
const bands: Readonly<Record<SoundOutcome['band'], string>> = {
  silent: 'below the threshold of hearing for such noise',
  'very-quiet': 'very quiet',
  quiet: 'quiet',
  noticeable: 'noticeable in a quiet room',
  clear: 'plain to notice in a quiet room',
  loud: 'loud for a living room',
};

/** How a sound stands against a background. */
const audibilities: Readonly<Record<Audibility, string>> = {
  silent: 'silent',
  masked: 'masked',
  borderline: 'at the border of being heard',
  audible: 'audible',
  unjudged: 'not judged',
};

const stands: Readonly<Record<Stand, string>> = {
  free: 'standing free',
  plane: 'on a surface',
  edge: 'at an edge',
  corner: 'in a corner',
};

/**
 * What the level of a duty means, in sentences. Whether it is heard is only said against a stated background.
 *
 * @param duty of a build
 */
export function soundSentences({ level, sound, tightest }: DutyOutcome): readonly string[] {
  const { against, room, spectrum, decibelCost } = sound;
  const guideline = `At or above the WHO value for bedrooms at night, ${quantity('level', BEDROOM_GUIDELINE)}.`;
  return [
    ...(Number.isFinite(level) ? [`${levelWords(level)} is ${bands[sound.band]}.`] : []),
    ...(sound.reachesBedroomValue ? [guideline] : []),
    ...(against ? [againstWords(against, sound)] : []),
    ...(room ? [roomWords(room)] : []),
    ...(spectrum ? spectrumWords(spectrum) : []),
    ...(decibelCost && tightest ? [costWords(decibelCost)] : []),
  ];
}

function againstWords(
  { background, together, audibility }: BackgroundOutcome,
  { tones }: SoundOutcome,
): string {
  const tone = tones.risk === 'low' ? '' : ', tones allowed for';
  const stated = `Against the stated background of ${levelWords(background)}: ${audibilities[audibility]}${tone}`;
  return `${stated}; ${levelText(together)} together.`;
}

function roomWords({ stand, absorption, level, rise }: RoomOutcome): string {
  const room = Number.isFinite(absorption) ? ` in a room of ${fixed(absorption, 1)} m² absorption` : '';
  const change = `${fixed(Math.abs(rise), 1)} dB ${rise < 0 ? 'less' : 'more'} than in the free field`;
  return `The box ${stands[stand]}${room}: ${levelWords(level)}, ${change}.`;
}

function spectrumWords(spectrum: SpectrumOutcome): readonly string[] {
  const { octaves, noiseRating, governing, loudness, loudnessLevel, assumedShare } = spectrum;
  const levels = octaves.map(({ level }) => fixed(level, 0)).join(' ');
  const estimate = assumedShare > ASSUMED_FROM ? ' (estimates: the usual spectrum of such sources)' : '';
  return [
    `Octaves 63 Hz to 8 kHz: ${levels} dB; NR ${fixed(noiseRating, 0)} by the octave at ${governing} Hz; ` +
      `${fixed(loudness, 2)} sone, ${fixed(loudnessLevel, 0)} phon${estimate}.`,
  ];
}

function costWords({ quieter, louder, heldByBands }: DecibelCost): string {
  const bands = heldByBands ? ' or a band to avoid' : '';
  const less =
    quieter === undefined
      ? `1 dB less is beyond the hold floors${bands}`
      : `1 dB less would ${quieter < 0 ? 'gain' : 'cost'} ${quantity('kelvins', Math.abs(quieter))} of the margin`;
  const more =
    louder === undefined
      ? `1 dB more is beyond full speed${bands}`
      : `1 dB more would ${louder < 0 ? 'cost' : 'gain'} ${quantity('kelvins', Math.abs(louder))}`;
  return `All fans together: ${less}, ${more}.`;
}
