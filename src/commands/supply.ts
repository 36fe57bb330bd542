import type { SupplyEfficiency } from '../heat/supply.ts';
import type { PeakKind, StartingFans } from '../heat/supply-headroom.ts';
import { supplyTiers, type TierPoint } from '../heat/supply-tiers.ts';
import { type Meta, toText } from '../presentation/document.ts';
import { supplyCsv, supplyDocument, supplyView } from '../presentation/questions/supply-view.ts';
import {
  type ScenarioSupply,
  type SupplyQuestion,
  supplyCheck,
  supplyOf,
  USUAL_PEAK,
} from '../questions/supply-check.ts';
import { chosenBuild, refuseCall } from './chosen-build.ts';
import { type ScenarioOptions, withScenario } from './command.ts';
import { type CommonOptions, type Console, EXIT, type ExitCode, openConsole } from './console.ts';
import { VERSION } from './version.ts';

/** Options of `supply`, in SI; those that are given count before what a scenario says. */
export interface SupplyCommandOptions extends Omit<ScenarioOptions, 'scenario'> {
  readonly scenario: string | undefined;
  readonly build: string | undefined;
  /** [W] */
  readonly wall: number | undefined;
  readonly efficiency: number | undefined;
  readonly tier: string | undefined;
  readonly mains: keyof typeof supplyTiers;
  /** [W] */
  readonly rating: number | undefined;
  readonly outside: boolean;
  /** [W] */
  readonly useful: number | undefined;
  /** Power of all fans at full speed [W]. */
  readonly fans: number | undefined;
  readonly peak: number | undefined;
  /** [ms] */
  readonly duration: number;
  /** Whether it rides through peaks as internal supplies must. */
  readonly internal: boolean;
  readonly csv: boolean;
}

/** Efficiency of a supply of which nothing is known [-]: 0.85 to 0.91. Assumption, no source. */
const USUAL_EFFICIENCY = 0.88;
/** Up to this rating the table of peaks for smaller supplies holds [W]. */
const SMALL = 450;
const MILLISECOND = 1e-3;

function tierOf(mains: keyof typeof supplyTiers, tier: string): readonly TierPoint[] | undefined {
  const tiers: Readonly<Record<string, readonly TierPoint[]>> = supplyTiers[mains];
  return tiers[tier];
}

function efficiencyOf(
  { efficiency, tier, mains }: SupplyCommandOptions,
  rating: number,
): SupplyEfficiency | undefined {
  if (efficiency !== undefined) return { kind: 'number', efficiency };
  const points = tier === undefined ? undefined : tierOf(mains, tier);
  return points && { kind: 'tier', tier: points, rating };
}

function kindOf(internal: boolean, rating: number): PeakKind {
  if (!internal) return 'none';
  return rating <= SMALL ? 'to 450 W' : 'above 450 W';
}

/** What is asked, or what is missing to ask it. */
function questionOf(
  options: SupplyCommandOptions,
  known: ScenarioSupply | undefined,
): SupplyQuestion | string {
  const wall = options.wall ?? known?.wall;
  const rating = options.rating ?? known?.rating;
  if (wall === undefined)
    return 'what does the meter at the wall read? Give --wall, or a scenario with a supply';
  if (rating === undefined) return 'what may the supply give? Give --rating';
  if (options.tier !== undefined && !tierOf(options.mains, options.tier))
    return `there is no tier "${options.tier}" at ${options.mains}`;
  const useful = options.useful ?? 0;
  if (useful >= wall) return 'more leaves as useful output than the wall gives';
  const usual: SupplyEfficiency = { kind: 'number', efficiency: USUAL_EFFICIENCY };
  const fans: readonly StartingFans[] =
    options.fans === undefined ? (known?.fans ?? []) : [{ count: 1, power: options.fans }];
  return {
    wall,
    rating,
    efficiency: efficiencyOf(options, rating) ?? known?.efficiency ?? usual,
    inside: options.outside ? false : (known?.inside ?? true),
    useful,
    fans,
    peak: { factor: options.peak ?? USUAL_PEAK, duration: options.duration * MILLISECOND },
    kind: kindOf(options.internal, rating),
  };
}

function answer(
  question: SupplyQuestion,
  options: CommonOptions & { csv: boolean },
  console: Console,
): ExitCode {
  const found = supplyCheck(question);
  const meta: Meta = { version: VERSION, command: 'supply' };
  if (options.csv) console.out(supplyCsv(found));
  else if (options.json) console.out(toText(supplyDocument(found, meta)));
  else console.out(supplyView(found, { paint: console.paint, width: console.width }));
  return found.verdict === 'fail' ? EXIT.noneAdequate : EXIT.answered;
}

/** Tells how a supply stands its load, from options or from the supply of a scenario. */
export function run(options: SupplyCommandOptions): Promise<ExitCode> {
  const { scenario } = options;
  if (scenario === undefined) {
    const console = openConsole(options);
    const question = questionOf(options, undefined);
    if (typeof question !== 'string') return Promise.resolve(answer(question, options, console));
    const meta: Meta = { version: VERSION, command: 'supply' };
    return Promise.resolve(refuseCall({ console, meta }, options, question));
  }
  const given = { ...options, scenario };
  return withScenario('supply', given, async (work) => {
    if (!supplyOf(work.enclosure, undefined))
      return refuseCall(work, given, 'no part of the scenario has a "wall"');
    const chosen = await chosenBuild(work, options.build);
    if ('refusal' in chosen) return refuseCall(work, given, chosen.refusal);
    const question = questionOf(options, supplyOf(work.enclosure, chosen.build));
    if (typeof question === 'string') return refuseCall(work, given, question);
    return answer(question, options, work.console);
  });
}
