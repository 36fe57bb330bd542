import type {
  Decibels,
  Fraction,
  KelvinDifference,
  MetresPerSecond,
  SquareMetres,
} from '../quantities/dimensions.ts';
import type { Audibility, LevelBand } from '../sound/audibility.ts';
import type { BeatRemedies } from '../sound/beating.ts';
import type { Band } from '../sound/spectrum.ts';
import type { Span } from '../sound/tone-assumptions.ts';
import type { ToneRisk } from '../sound/tone-risk.ts';
import type { Stand } from './hearing.ts';

/** What is heard against a stated background. */
export interface BackgroundOutcome {
  /** A-weighted level without the box [dB]. */
  readonly background: Decibels;
  /** A-weighted level of the background and the box [dB]. */
  readonly together: Decibels;
  readonly audibility: Audibility;
}

/** The level with the room around, an extra beside the free-field level. */
export interface RoomOutcome {
  readonly stand: Stand;
  /** Equivalent absorption area [m²]; infinite in the open. */
  readonly absorption: SquareMetres;
  /** A-weighted level [dB]. */
  readonly level: Decibels;
  /** What it is above the free-field level [dB]. */
  readonly rise: Decibels;
}

/** How the sound at the listener is spread over the frequencies. */
export interface SpectrumOutcome {
  /** Unweighted octaves from 63 Hz to 8 kHz, free field [dB]. */
  readonly octaves: readonly Band[];
  /** Noise rating NR [-] and the octave that sets it [Hz]. */
  readonly noiseRating: number;
  readonly governing: number;
  /** Loudness [sone] and loudness level [phon]. */
  readonly loudness: number;
  readonly loudnessLevel: number;
  /** Share of the A-weighted energy whose spread over the octaves is assumed and not given by the catalog [-]. */
  readonly assumedShare: Fraction;
}

/** The tone of a bank's blades. */
export interface BankTone extends ToneRisk {
  readonly place: string;
  /** Blade-pass frequency [Hz]; absent if the number of blades is unknown. */
  readonly bladePass?: number;
}

/** Two blade-pass tones that may beat so slowly that it is heard as fluctuation. */
export interface BeatOutcome extends BeatRemedies {
  /** Places of the two fans; the same twice for two fans of one bank. */
  readonly places: readonly [string, string];
  /** Beat frequency at the speeds told [Hz]; 0 for two fans of one bank. */
  readonly nominal: number;
  /** Beat frequencies to be expected, as real fans differ in speed [Hz]. */
  readonly expected: Span;
  /** Loudest moment over the louder tone alone [dB]. */
  readonly peak: Decibels;
  /** From the quietest to the loudest moment of the tones [dB]; absent if they can cancel altogether. */
  readonly swing?: Decibels;
}

/** Tones and what may come of them. */
export interface ToneOutcome {
  readonly banks: readonly BankTone[];
  readonly beats: readonly BeatOutcome[];
  /** The highest risk of all banks; low if nothing turns. */
  readonly risk: ToneRisk['risk'];
}

/** Sharp-edged holes with so fast a stream that they may whistle. */
export interface WhistleOutcome {
  readonly place: string;
  /** Velocity in the holes [m/s]. */
  readonly velocity: MetresPerSecond;
}

/** What a decibel is worth in kelvin at a build, all speeds moved in proportion as far as each may. */
export interface DecibelCost {
  /** Whether bands to avoid limit how far a bank may move. */
  readonly heldByBands: boolean;
  /** Margin of the tightest limit lost if the level falls by 1 dB [K]; absent if the banks cannot go so slow. */
  readonly quieter?: KelvinDifference;
  /** Margin of the tightest limit gained if it rises by 1 dB [K]; absent if the banks cannot go so fast. */
  readonly louder?: KelvinDifference;
}

/** What the level of a duty means to who listens. */
export interface SoundOutcome {
  readonly band: LevelBand;
  /** Only if a background is stated. */
  readonly against?: BackgroundOutcome;
  /** Whether the level reaches the guideline value for sound inside bedrooms at night. */
  readonly reachesBedroomValue: boolean;
  /** Only if the room or where the box stands in it is stated. */
  readonly room?: RoomOutcome;
  /** Absent in silence. */
  readonly spectrum?: SpectrumOutcome;
  readonly tones: ToneOutcome;
  readonly whistles: readonly WhistleOutcome[];
  /** Absent if nothing has a limit or nothing turns. */
  readonly decibelCost?: DecibelCost;
}
