import { audibility, BEDROOM_GUIDELINE, levelBand } from '../sound/audibility.ts';
import { energy, sumLevels } from '../sound/levels.ts';
import { phons } from '../sound/loudness.ts';
import { noiseRating } from '../sound/noise-rating.ts';
import type { Directivity } from '../sound/rating.ts';
import { pressureOverPowerInRoom } from '../sound/room.ts';
import { sumSpectra } from '../sound/spectrum.ts';
import { octaveLoudness } from '../sound/zwicker-loudness.ts';
import { decibelCost } from './decibel-cost.ts';
import { dutyTones } from './duty-tones.ts';
import type { Enclosure } from './enclosure.ts';
import { directivityOf, distanceOf, STANDS } from './hearing.ts';
import { levelOfEnergy, ventFlow } from './noise.ts';
import { placeId, type SolvedPass } from './solved-pass.ts';
import type {
  BackgroundOutcome,
  RoomOutcome,
  SoundOutcome,
  SpectrumOutcome,
  ToneOutcome,
  WhistleOutcome,
} from './sound-outcome.ts';
import type { SoundSource } from './sound-sources.ts';

function totalOf(sources: readonly SoundSource[]): number {
  return sources.reduce((sum, source) => sum + source.energy, 0);
}

/** A tone that may stand out is heard further below the background; medium risk counts, to be on the safe side. */
function against(
  { listener, assumptions }: Enclosure,
  level: number,
  { risk }: ToneOutcome,
): BackgroundOutcome | undefined {
  const { background } = listener;
  if (background === undefined) return undefined;
  return {
    background,
    together: sumLevels([background, level]),
    audibility: audibility(level, background, risk !== 'low', assumptions.sound),
  };
}

/** An opening stands in a wall, so the sound of it never spreads all round. */
function spreadOf({ kind }: SoundSource, stand: Directivity): Directivity {
  return kind === 'opening' && stand === 1 ? 2 : stand;
}

/** Level in the room stated; undefined if nothing is stated of it. */
function roomOutcome(
  enclosure: Enclosure,
  sources: readonly SoundSource[],
  level: number,
): RoomOutcome | undefined {
  const { stand = 'free', absorption = Number.POSITIVE_INFINITY } = enclosure.listener;
  if (stand === 'free' && !Number.isFinite(absorption)) return undefined;
  const sum = sources.reduce((total, source) => {
    const { place, power } = source;
    const overPower = pressureOverPowerInRoom({
      distance: distanceOf(enclosure, place),
      directivity: spreadOf(source, STANDS[stand]),
      index: directivityOf(enclosure, place),
      absorption,
    });
    return total + power * energy(overPower);
  }, 0);
  if (sum === 0) return undefined;
  return { stand, absorption, level: levelOfEnergy(sum), rise: levelOfEnergy(sum) - level };
}

function spectrumOutcome(sources: readonly SoundSource[]): SpectrumOutcome | undefined {
  const heard = sources.filter((source) => source.energy > 0);
  const octaves = sumSpectra(heard.map((source) => source.octaves));
  const rating = noiseRating(octaves);
  if (heard.length === 0 || !rating) return undefined;
  const loudness = octaveLoudness(octaves);
  return {
    octaves,
    noiseRating: rating.rating,
    governing: rating.governing,
    loudness,
    loudnessLevel: phons(loudness),
    assumedShare: totalOf(heard.filter(({ octavesGiven }) => !octavesGiven)) / totalOf(heard),
  };
}

/** Vents of sharp edges that are blown through too fast. */
function whistlesOf({ machine, state }: SolvedPass): readonly WhistleOutcome[] {
  const { whistleVelocity } = machine.plant.enclosure.assumptions.sound.opening;
  return machine.vents.flatMap((vent) => {
    const { disturbance, freeArea } = vent.element;
    if (disturbance !== 'panel' || freeArea === undefined) return [];
    const velocity = Math.abs(ventFlow(machine, vent, state)) / freeArea;
    return velocity > whistleVelocity ? [{ place: placeId(machine, vent.place), velocity }] : [];
  });
}

/**
 * What the level of a duty means to who listens, and where it may sound worse than it measures.
 *
 * @param solved a pass that has settled
 * @param sources its sources
 */
export function soundOutcome(solved: SolvedPass, sources: readonly SoundSource[]): SoundOutcome {
  const { enclosure } = solved.machine.plant;
  const level = levelOfEnergy(totalOf(sources));
  const tones = dutyTones(solved, sources);
  const heard = against(enclosure, level, tones);
  const room = roomOutcome(enclosure, sources, level);
  const spectrum = spectrumOutcome(sources);
  const cost = decibelCost(solved);
  return {
    band: levelBand(level, enclosure.assumptions.sound),
    ...(heard ? { against: heard } : {}),
    reachesBedroomValue: level >= BEDROOM_GUIDELINE,
    ...(room ? { room } : {}),
    ...(spectrum ? { spectrum } : {}),
    tones,
    whistles: whistlesOf(solved),
    ...(cost ? { decibelCost: cost } : {}),
  };
}
