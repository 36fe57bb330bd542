import { beatRange, beatRemedies, nearestIn, overlap } from '../sound/beating.ts';
import type { Obstacle } from '../sound/fan-noise.ts';
import type { ToneAssumptions } from '../sound/tone-assumptions.ts';
import { type ToneRisk, toneRisk } from '../sound/tone-risk.ts';
import { beat, beatDepth, beatPeak, bladePass } from '../sound/tones.ts';
import type { BankPlace } from './enclosure.ts';
import { bankSurroundings, type Surroundings } from './installation.ts';
import type { MachineBank } from './machine.ts';
import { flowShare, levelOfEnergy } from './noise.ts';
import { placeId, type SolvedPass } from './solved-pass.ts';
import type { BankTone, BeatOutcome, ToneOutcome } from './sound-outcome.ts';
import type { SoundSource } from './sound-sources.ts';

/** A bank that turns, with its tone. */
interface TurningBank {
  readonly entry: MachineBank;
  readonly place: string;
  /** Speed as a share of full speed [-], and as revolutions [1/s]. */
  readonly ratio: number;
  readonly speed: number;
  readonly blades?: number;
  /** Level of the bank at the listener [dB]. */
  readonly level: number;
}

function turningBanks(solved: SolvedPass, sources: readonly SoundSource[]): readonly TurningBank[] {
  const { machine, ratios } = solved;
  return machine.banks.flatMap((entry, index) => {
    const ratio = ratios[index] as number;
    const { fan, count } = entry.bank;
    if (!(ratio > 0 && count > 0)) return [];
    const source = sources.find(({ place, kind }) => kind === 'fans' && place === entry.place);
    return {
      entry,
      place: placeId(machine, entry.place),
      ratio,
      speed: ratio * fan.fullSpeed,
      ...(fan.blades === undefined ? {} : { blades: fan.blades }),
      level: levelOfEnergy(source?.energy ?? 0),
    };
  });
}

/** Whether two tones are so near that real fans may well meet: then the pair is told of however fast they may beat. */
function areAlike(one: number, other: number, { speedDifference }: ToneAssumptions): boolean {
  return beat(one, other) < speedDifference.from * Math.max(one, other);
}

/**
 * The beat of two fans; undefined if it is too fast or too slow to be heard as fluctuation and the tones are not alike, or
 * a tone is unknown.
 */
function beatOf(first: TurningBank, second: TurningBank, limits: ToneAssumptions): BeatOutcome | undefined {
  if (first.blades === undefined || second.blades === undefined) return undefined;
  const tone = bladePass(first.blades, first.speed);
  const other = bladePass(second.blades, second.speed);
  const expected = beatRange(tone, other, limits.speedDifference);
  if (!overlap(expected, limits.beat) && !areAlike(tone, other, limits)) return undefined;
  const apart = first.level - second.level;
  const swing = beatDepth(apart);
  return {
    places: [first.place, second.place],
    nominal: beat(tone, other),
    expected,
    peak: beatPeak(apart),
    ...(Number.isFinite(swing) ? { swing } : {}),
    ...beatRemedies(tone, second.blades, second.speed, limits.locked),
  };
}

/** Beats inside each bank of several fans, then between banks, the louder one first. */
function beatsOf(banks: readonly TurningBank[], limits: ToneAssumptions): readonly BeatOutcome[] {
  const inside = banks.filter(({ entry }) => entry.bank.count > 1).map((bank) => [bank, bank] as const);
  const between = banks.flatMap((one, index) =>
    banks
      .slice(index + 1)
      .map((other) => (one.level >= other.level ? ([one, other] as const) : ([other, one] as const))),
  );
  return [...inside, ...between].flatMap(([first, second]) => beatOf(first, second, limits) ?? []);
}

/** Whether a fan stands in series so close that the wake of one meets the blades of the other. */
function touches({ inlet, outlet }: Surroundings, reach: number): boolean {
  const close = ({ disturbance, gap }: Obstacle): boolean =>
    disturbance === 'counter-fan' || (disturbance === 'fan' && gap <= reach);
  return inlet.some(close) || outlet.some(close);
}

function surroundingsOf({ machine }: SolvedPass, { place, leg, stage, bank }: MachineBank): Surroundings {
  const { enclosure } = machine.plant;
  const there = enclosure.places[place] as BankPlace;
  return bankSurroundings(enclosure, machine.build, there, leg, stage, bank);
}

function riskOf(solved: SolvedPass, bank: TurningBank, beats: readonly BeatOutcome[]): ToneRisk {
  const { sound } = solved.machine.plant.enclosure.assumptions;
  const { fan } = bank.entry.bank;
  const surroundings = surroundingsOf(solved, bank.entry);
  const gaps = surroundings.inlet.map(({ gap }) => gap);
  const { blades } = bank;
  return toneRisk(
    {
      ...(blades === undefined ? {} : { bladePass: bladePass(blades, bank.speed) }),
      ...(gaps.length === 0 ? {} : { inletGap: Math.min(...gaps) / fan.size }),
      beats: beats
        .filter(({ places }) => places.includes(bank.place))
        .map(({ expected }) => nearestIn(expected, sound.toneRisk.beat)),
      flowShare: flowShare(solved.machine, bank.entry, bank.ratio, solved.state),
      closeSeries: touches(surroundings, sound.toneRisk.touching * fan.size),
      strutsMatchBlades: blades !== undefined && fan.struts === blades,
    },
    sound,
  );
}

const RISKS: readonly ToneRisk['risk'][] = ['low', 'medium', 'high'];

/**
 * Tones of the blades, beats between them, and the risk that they stand out.
 *
 * @param solved a pass that has settled
 * @param sources its sources
 */
export function dutyTones(solved: SolvedPass, sources: readonly SoundSource[]): ToneOutcome {
  const banks = turningBanks(solved, sources);
  const beats = beatsOf(banks, solved.machine.plant.enclosure.assumptions.sound.toneRisk);
  const tones = banks.map((bank): BankTone => {
    const { place, blades, speed } = bank;
    const tone = blades === undefined ? {} : { bladePass: bladePass(blades, speed) };
    return { place, ...tone, ...riskOf(solved, bank, beats) };
  });
  const highest = Math.max(0, ...tones.map(({ risk }) => RISKS.indexOf(risk)));
  return { banks: tones, beats, risk: RISKS[highest] ?? 'low' };
}
