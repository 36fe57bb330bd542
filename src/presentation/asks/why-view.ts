import type { KelvinDifference } from '../../quantities/dimensions.ts';
import type { AskReason } from '../../search/asks/reasons.ts';
import { isFailed } from '../../search/build-outcome.ts';
import type { BrokenAsk } from '../../search/why/broken-asks.ts';
import type { Difference, WhyNot } from '../../search/why/why-not.ts';
import { count, fixed, levelWords, prices, quantity } from '../figures.ts';
import { printable } from '../printable.ts';
import { wrapped } from '../prose.ts';
import { limited, tightestOf } from '../standing-out.ts';
import type { Drawing } from '../table.ts';

/** Differences smaller than these are none: half of what is shown. */
const NO_LEVEL = 0.05;
const NO_POWER = 0.05;
const NO_DEPTH = 5e-4;

function priceWords(price: number): string {
  return Number.isFinite(price) ? (prices([price])[0] ?? '') : 'unknown';
}

function depthWords(depth: number): string {
  return `${fixed(1000 * depth, 0)} mm`;
}

function amperes(current: number): string {
  return `${fixed(current, 2)} A`;
}

const words: Readonly<Record<AskReason, (broken: BrokenAsk) => string>> = {
  'dearer than asked': ({ found, most }) =>
    `its fans cost ${priceWords(found)}, and ${priceWords(most)} is the most that is asked for`,
  'of more fan power than asked': ({ found, most }) =>
    `its fans take ${quantity('power', found)} at full speed, and ${quantity('power', most)} is the most that is asked for`,
  'of more current than a header may give': ({ found, most, at = '' }) =>
    `the header ${at} would have to give ${amperes(found)}, and it gives ${amperes(most)}`,
  'of more models than asked': ({ found, most }) =>
    `it has ${count(found)} models of fans, and ${count(most)} is the most that is asked for`,
  'deeper than asked': ({ found, most, at = '' }) =>
    `the fans in ${at} are ${depthWords(found)} deep together, and ${depthWords(most)} is the most that is asked for`,
  'too warm with a dead fan': ({ found, at = '' }) =>
    `with a fan of ${at} dead and all others at full speed, ${overWords(found)}`,
  'louder than asked': ({ found, most }) =>
    `it makes ${levelWords(found)}, and ${levelWords(most)} is the most that is asked for`,
  'more tonal than asked': ({ found, most }) =>
    `a bank has ${count(found)} points of tone risk at these speeds, and ${count(most)} is the most that is asked for`,
  'beyond the end of the list': () => 'it stands beyond the end of the list',
};

function overWords(over: KelvinDifference): string {
  return Number.isFinite(over)
    ? `a limit is exceeded by ${quantity('kelvins', over)}`
    : 'there is no solution';
}

function signed(text: string, value: number, more: string, less: string): string {
  return `${text} ${value > 0 ? more : less}`;
}

function differenceWords({ level, price, fanPower, depth, reserve }: Difference): readonly string[] {
  return [
    ...(Math.abs(level) >= NO_LEVEL
      ? [signed(quantity('level', Math.abs(level)).replace('(A)', ''), level, 'louder', 'quieter')]
      : ['as loud']),
    ...(price !== undefined && price !== 0
      ? [signed(priceWords(Math.abs(price)), price, 'dearer', 'cheaper')]
      : []),
    ...(Math.abs(fanPower) >= NO_POWER
      ? [`${quantity('power', Math.abs(fanPower))} ${fanPower > 0 ? 'more' : 'less'} for its fans`]
      : []),
    ...(Math.abs(depth) >= NO_DEPTH ? [signed(depthWords(Math.abs(depth)), depth, 'deeper', 'thinner')] : []),
    ...(Number.isFinite(reserve) && Math.abs(reserve) >= NO_LEVEL
      ? [`${quantity('kelvins', Math.abs(reserve))} ${reserve > 0 ? 'more' : 'less'} in hand at full speed`]
      : []),
  ];
}

/** What the limits have to say: the tightest that holds, or all duties in which one does not. */
function limitSentences({ build }: WhyNot, margin: KelvinDifference): readonly string[] {
  if (isFailed(build)) return [`In ${build.duty} there is no solution: ${build.reason}.`];
  if (build.adequate) {
    const tightest = tightestOf(build);
    if (!tightest) return [];
    const left = quantity('kelvins', tightest.margin);
    return [`Its tightest limit is ${limited(tightest)} in ${tightest.duty}, with ${left} to it.`];
  }
  return build.duties
    .filter(({ adequate }) => !adequate)
    .flatMap(({ duty, failures, tightest }) => [
      ...failures.map(({ part, reason }) => `In ${duty}, ${part} fails: ${reason}.`),
      ...(tightest && tightest.margin < margin
        ? [
            `In ${duty}, ${limited(tightest)} is ${quantity('kelvins', margin - tightest.margin)} over its limit${margin > 0 ? ', the asked margin included' : ''}, at the coolest speeds met.`,
          ]
        : []),
    ]);
}

function verdict({ name, row, broken, level, more }: WhyNot): string {
  const build = `"${name}"`;
  if (level === undefined) return `${build} is not in the list: it does not hold its limits.`;
  const but = broken.length > 0 ? ', but not all is as asked' : '';
  if (row === 1 && broken.length === 0) return `${build} is the first of the list.`;
  const where = row === undefined ? 'is not in the list' : `is row ${row}`;
  const against = more ? ` Against row 1 it is ${listed(differenceWords(more))}.` : '';
  return `${build} ${where}: it is adequate, at ${levelWords(level)}${but}.${against}`;
}

function listed(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/**
 * Why a build is not the first of the list, as text.
 *
 * @param why what was found
 * @param margin asked of every limit [K]
 * @param drawing width
 * @returns lines that end with a line break
 */
export function whyView(why: WhyNot, margin: KelvinDifference, { width }: Pick<Drawing, 'width'>): string {
  const broken = why.broken.map((each) => sentence(words[each.reason](each)));
  const sentences = [verdict(why), ...limitSentences(why, margin), ...broken];
  return `${sentences.flatMap((text) => wrapped(printable(text), width)).join('\n')}\n`;
}
