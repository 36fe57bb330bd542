import type {
  BackgroundOutcome,
  BeatOutcome,
  RoomOutcome,
  SoundOutcome,
  SpectrumOutcome,
  ToneOutcome,
} from '../enclosure/sound-outcome.ts';
import type { Json } from './document.ts';

/**
 * What a level means to who listens, as data: SI, the unit in each key. What does not exist is null.
 *
 * @param sound of a duty
 */
export function soundData(sound: SoundOutcome): Json {
  const { against, room, spectrum, tones, whistles, decibelCost } = sound;
  return {
    band: sound.band,
    against: against ? againstData(against) : null,
    reachesBedroomValue: sound.reachesBedroomValue,
    room: room ? roomData(room) : null,
    spectrum: spectrum ? spectrumData(spectrum) : null,
    tones: toneData(tones),
    whistles: whistles.map(({ place, velocity }) => ({ place, velocity_m_s: velocity })),
    decibelCost: decibelCost
      ? {
          quieter_K: decibelCost.quieter ?? null,
          louder_K: decibelCost.louder ?? null,
          heldByBands: decibelCost.heldByBands,
        }
      : null,
  };
}

function againstData({ background, together, audibility }: BackgroundOutcome): Json {
  return { background_dBA: background, together_dBA: together, audibility };
}

function roomData({ stand, absorption, level, rise }: RoomOutcome): Json {
  return {
    stand,
    absorption_m2: Number.isFinite(absorption) ? absorption : null,
    level_dBA: level,
    rise_dB: rise,
  };
}

function spectrumData(spectrum: SpectrumOutcome): Json {
  return {
    octaves: spectrum.octaves.map(({ centre, level }) => ({ centre_Hz: centre, level_dB: level })),
    noiseRating: spectrum.noiseRating,
    governing_Hz: spectrum.governing,
    loudness_sone: spectrum.loudness,
    loudnessLevel_phon: spectrum.loudnessLevel,
    assumedShare: spectrum.assumedShare,
  };
}

function toneData({ risk, banks, beats }: ToneOutcome): Json {
  return {
    risk,
    banks: banks.map(({ place, bladePass, risk: own, points }) => ({
      place,
      bladePass_Hz: bladePass ?? null,
      risk: own,
      points,
    })),
    beats: beats.map(beatData),
  };
}

function beatData(beat: BeatOutcome): Json {
  return {
    places: beat.places,
    nominal_Hz: beat.nominal,
    from_Hz: beat.expected.from,
    to_Hz: beat.expected.to,
    peak_dB: beat.peak,
    swing_dB: beat.swing ?? null,
    lockAt_1_s: beat.lockAt,
    lockWithin_1_s: beat.lockWithin,
    runApart_1_s: beat.runApart,
    avoid: { from_1_s: beat.avoid.from, to_1_s: beat.avoid.to },
    blades: { most: beat.blades.most, least: beat.blades.least },
  };
}
