import type {
  BankOutcome,
  BudgetLine,
  BuildOutcome,
  DutyOutcome,
  LegOutcome,
  PartOutcome,
} from '../../src/enclosure/outcome.ts';
import type { SoundOutcome } from '../../src/enclosure/sound-outcome.ts';
import type { NearestMiss, RankedBuild, Ranking } from '../../src/search/ranking.ts';
import { levelBand } from '../../src/sound/audibility.ts';
import { octaveBands } from '../../src/sound/rated-spectrum.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';

/** Outcomes made by hand: plausible, invented, with budgets that sum. None was computed by the model. */

const sum = (lines: readonly BudgetLine[]): number => lines.reduce((total, { amount }) => total + amount, 0);

export function bank(
  place: string,
  fan: string,
  ratio: number,
  changes: Partial<BankOutcome> = {},
): BankOutcome {
  return {
    place,
    fan,
    count: 1,
    ratio,
    speed: ratio * 40,
    flow: 0.0087,
    pressureRise: 14.32,
    flowShare: 0.56,
    power: 0.74,
    stalled: false,
    overdriven: false,
    backflow: false,
    synthesisedCurve: false,
    ...changes,
  };
}

export function leg(
  name: string,
  from: string,
  to: string,
  flow: number,
  pressures: readonly BudgetLine[],
): LegOutcome {
  return {
    leg: name,
    from,
    to,
    massFlow: flow * 1.16,
    flow,
    pressureDifference: sum(pressures),
    pressures,
    reversed: flow < 0,
  };
}

export function part(name: string, room: number, limit: number, rise: readonly BudgetLine[]): PartOutcome {
  const temperature = room + sum(rise);
  return {
    part: name,
    power: 95,
    temperature,
    rise,
    loopGain: 0.064,
    limits: [{ of: 'part', limit, found: temperature, margin: limit - temperature }],
  };
}

/** A source as far off as the box, without directivity. */
export const heard = { distance: 1, directivity: 0 };

/** What a level means, with a spectrum made up and tones of two banks. */
export function sound(level: number, changes: Partial<SoundOutcome> = {}): SoundOutcome {
  return {
    band: levelBand(level, SOUND_ASSUMPTIONS),
    reachesBedroomValue: level >= 30,
    spectrum: {
      octaves: octaveBands([20.4, 24.6, 23, 20.1, 17.4, 12.3, 6.6, -0.4]),
      noiseRating: 17.43,
      governing: 1000,
      loudness: 0.514,
      loudnessLevel: 31.4,
      assumedShare: 1,
    },
    tones: {
      risk: 'medium',
      banks: [
        { place: 'push', bladePass: 173.6, risk: 'medium', points: 2 },
        { place: 'exit', risk: 'low', points: 0 },
      ],
      beats: [],
    },
    whistles: [],
    decibelCost: { heldByBands: false, quieter: 1.234, louder: 1.125 },
    ...changes,
  };
}

/** A duty of a box with a push bank, a fin stack and an exhaust. */
export function duty(name: string, share: number, changes: Partial<DutyOutcome> = {}): DutyOutcome {
  const room = changes.room ?? 299.15;
  const level = changes.level ?? 24.64;
  const processor = part('processor', room, 358.15, [
    { label: 'recirculated exhaust', amount: 1.234 },
    { label: 'fans before the fins', amount: 0.071 },
    { label: 'air to fin base', amount: 31.444 },
    { label: 'fin base to part', amount: 15.204 },
  ]);
  const limit = processor.limits[0];
  const heat = [
    { label: 'processor', amount: 95.04 },
    { label: 'board', amount: 22.04 },
    { label: 'push', amount: 0.74 },
    { label: 'exit', amount: 0.44 },
  ];
  return {
    duty: name,
    share,
    room,
    adequate: true,
    banks: [bank('push', 'p92-15-b', 0.62), bank('exit', 'p80-25-c', 0.447, { count: 2, flow: 0.0091 })],
    legs: [
      leg('intake', 'outside', 'core', 0.00867, [
        { label: 'front', amount: 0.84 },
        { label: 'dust', amount: 1.24 },
        { label: 'push', amount: -14.32 },
        { label: 'stack', amount: 9.04 },
      ]),
      leg('exhaust', 'core', 'outside', 0.00912, [
        { label: 'exit', amount: -1.44 },
        { label: 'rear', amount: 4.64 },
      ]),
    ],
    chambers: [
      { chamber: 'outside', pressure: 0, temperature: room },
      { chamber: 'core', pressure: 3.2, temperature: room + 11.26 },
    ],
    parts: [processor],
    panels: [],
    failures: [],
    ...(limit ? { tightest: { part: 'processor', ...limit } } : {}),
    sources: [
      { source: 'push', kind: 'fans', ...heard, level: level - 2.04, share: 0.6252 },
      { source: 'exit', kind: 'fans', ...heard, level: level - 4.53, share: 0.3524 },
      { source: 'rear', kind: 'opening', ...heard, level: level - 16.5, share: 0.0224 },
    ],
    level,
    sound: sound(level),
    fanPower: 1.18,
    heat,
    heatCarried: sum(heat),
    throughFlow: 0.01006,
    exhaustTemperature: room + 11.26,
    remarks: [],
    ...changes,
  };
}

export function build(changes: Partial<BuildOutcome> = {}): BuildOutcome {
  return {
    build: {
      options: [3, 0, 7, 1],
      arrangement: 'push on stack, exit exhausting',
      places: [
        { place: 'front', holds: '' },
        { place: 'push', holds: 'p92-15-b x1' },
        { place: 'pull', holds: 'empty' },
        { place: 'exit', holds: 'p80-25-c x2' },
        { place: 'rear', holds: 'hole 5 mm' },
      ],
      fanCount: 3,
      depth: 0.05,
      price: 38,
    },
    adequate: true,
    duties: [
      duty('idle', 0.7, {
        level: 15.23,
        banks: [bank('push', 'p92-15-b', 0.27), bank('exit', 'p80-25-c', 0.2)],
      }),
      duty('work', 0.3),
      duty('hot day', 0, { room: 308.15, level: 31.42 }),
    ],
    level: 20.81,
    loudest: 24.64,
    fanPower: 0.54,
    reserve: 9.34,
    ...changes,
  };
}

/** Five rows, three of them tied; some have one bank, some three, some another vent. */
function rows(): readonly RankedBuild[] {
  const first = build();
  const single: BuildOutcome = {
    ...first,
    build: { ...first.build, arrangement: 'exit exhausting', fanCount: 1, price: 12.5 },
    duties: [
      duty('idle', 0.7, { level: 14 }),
      duty('work', 0.3, { level: 26.1, banks: [bank('exit', 'd92-38-e', 0.88)] }),
      duty('hot day', 0, { room: 308.95, level: 31 }),
    ],
    level: 20.62,
    loudest: 26.1,
  };
  const triple = duty('work', 0.3, {
    banks: [
      bank('push', 'p92-15-b', 0.51),
      bank('pull', 'p92-15-b', 0.51, { synthesisedCurve: true }),
      bank('exit', 'p80-25-c', 0.33, { count: 2 }),
    ],
  });
  const wide: BuildOutcome = {
    ...first,
    build: {
      ...first.build,
      arrangement: 'push-pull on stack, exit exhausting',
      places: first.build.places.map((entry) =>
        entry.place === 'rear' ? { place: 'rear', holds: 'hole 6 mm' } : entry,
      ),
    },
    duties: [duty('idle', 0.7, { level: 15 }), triple, duty('hot day', 0, { room: 309.15 })],
    level: 21.16,
  };
  return [
    { rank: 1, tie: 1, outcome: first },
    { rank: 2, tie: 1, outcome: single },
    { rank: 3, tie: 1, outcome: wide },
    { rank: 4, tie: 2, outcome: { ...single, level: 23.1 } },
    { rank: 5, tie: 3, outcome: { ...wide, level: 24.5, build: { ...wide.build, price: 112.4 } } },
  ];
}

/** The first row's build on a day that is too hot for it. */
export function miss(): NearestMiss {
  const worse = duty('hot day', 0, { room: 311.15, adequate: false });
  const outcome = build();
  return {
    outcome: { ...outcome, adequate: false, reserve: -1.0, duties: [...outcome.duties.slice(0, 2), worse] },
    duty: 'hot day',
    part: 'processor',
    of: 'part',
    over: 2.953,
  };
}

export function ranking(changes: Partial<Ranking> = {}): Ranking {
  return {
    title: 'Film scanner, desk side, 7 litre',
    rows: rows(),
    asked: 5,
    count: {
      space: 14_860,
      solved: 212,
      ruledOut: [
        { bound: 'too little air power for so little noise', builds: 13_900 },
        { bound: 'too warm at full speed', builds: 748 },
        { bound: 'too warm at speeds quiet enough', builds: 0 },
      ],
      open: 0,
      gap: 0.01,
      passes: 51_234,
    },
    complete: true,
    ...changes,
  };
}
