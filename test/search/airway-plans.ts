import type { Random } from './random.ts';

/** One leg of a plan: a letter a place, in stream order; B is a place for fans, F fins, V a vent, S a gap. */
export interface PlannedLeg {
  readonly from: number;
  readonly to: number;
  readonly letters: string;
}

export type Plan = readonly PlannedLeg[];

/** Plans by number of banks; chamber 0 is the room. Several set banks against each other. */
const PLANS: readonly (readonly string[])[] = [
  // One bank.
  ['0>1 VBF', '1>0 V'],
  ['0>1 VFB', '0>1 S', '1>0 V'],
  ['0>1 VF', '0>1 S', '1>0 BV'],
  ['0>1 MF', '0>1 VF', '1>0 BV'],
  ['0>1 VBF', '1>2 S', '2>0 V', '1>0 S'],
  ['0>1 V', '1>2 BF', '2>1 S', '2>0 V', '1>0 S'],
  ['0>1 V', '0>2 V', '1>2 F', '1>0 BV', '2>0 K'],
  // Two banks.
  ['0>1 VBFB', '1>0 V'],
  ['0>1 VBF', '0>1 S', '1>0 BV'],
  ['0>1 VBBF', '0>1 S', '1>0 V'],
  ['0>1 MF', '1>0 BFBV'],
  ['0>1 BF', '0>1 F', '1>0 BV'],
  ['0>1 V', '1>0 S', '0>1 BF', '1>0 FB'],
  ['0>1 VBF', '0>1 VBF', '1>0 V'],
  ['0>1 BF', '0>1 BF', '0>1 S', '1>0 S'],
  ['0>1 VF', '0>1 S', '1>0 BV', '1>0 BV'],
  ['0>1 V', '1>0 FBV', '1>0 BV'],
  ['0>1 VBF', '1>0 VF', '0>1 BK'],
  ['0>1 BF', '1>0 FS', '0>1 BV'],
  ['0>1 VBF', '1>2 BK', '2>0 V', '1>0 S'],
  ['0>1 VBF', '0>2 VBF', '1>2 S', '1>0 V', '2>0 V'],
  ['0>1 VB', '0>2 V', '1>2 F', '1>0 V', '2>0 BV'],
  ['0>1 V', '1>2 BF', '2>1 S', '1>0 BV', '0>2 S'],
  ['0>1 VF', '1>2 FB', '2>1 B', '2>0 V'],
  // Three banks.
  ['0>1 VBBF', '1>0 BV'],
  ['0>1 VBF', '0>1 S', '1>0 FBBV'],
  ['0>1 VF', '1>0 BFBBV', '0>1 S'],
  ['0>1 VBFB', '0>1 S', '1>0 BV'],
  ['0>1 VBF', '0>1 VBF', '1>0 BV'],
  ['0>1 VBF', '1>0 BV', '1>0 BV', '0>1 S'],
  ['0>1 BF', '0>1 BF', '0>1 BK', '1>0 V'],
  ['0>1 VBF', '0>2 BF', '2>1 S', '1>0 BV', '2>0 V'],
  ['0>1 VBF', '1>2 BF', '2>0 BV', '0>2 S'],
  ['0>1 VB', '0>2 VB', '1>2 F', '1>0 V', '2>0 BV'],
];

function parsed(lines: readonly string[]): Plan {
  return lines.map((line) => {
    const [ends = '', letters = ''] = line.split(' ');
    const [from, to] = ends.split('>').map(Number);
    return { from: from ?? 0, to: to ?? 0, letters };
  });
}

function banksIn(plan: Plan): number {
  return plan.reduce((sum, leg) => sum + leg.letters.split('B').length - 1, 0);
}

/** Any legs between any chambers; each chamber has an opening to the room. */
function scattered(random: Random, banks: number): Plan {
  const chambers = random.whole(1, 2);
  const legs: PlannedLeg[] = [];
  const add = (letters: string): void => {
    const from = random.whole(0, chambers);
    const to = (from + random.whole(1, chambers)) % (chambers + 1);
    legs.push({ from, to, letters });
  };
  for (let bank = 0; bank < banks; bank++) add(random.pick(['B', 'BF', 'VBF', 'FB', 'BV']));
  for (let chamber = 1; chamber <= chambers; chamber++) {
    const ends = random.chance(0.5) ? { from: 0, to: chamber } : { from: chamber, to: 0 };
    legs.push({ ...ends, letters: random.pick(['V', 'VF', 'FM', 'K', 'S']) });
  }
  for (let extra = random.whole(0, 2); extra > 0; extra--) add(random.pick(['S', 'F', 'V', 'VF']));
  return legs;
}

/** The same plan with a leg without fans turned round now and then: its air then runs against its direction. */
function turned(random: Random, plan: Plan): Plan {
  return plan.map((leg) =>
    !leg.letters.includes('B') && random.chance(0.08) ? { ...leg, from: leg.to, to: leg.from } : leg,
  );
}

/** Whether a plan has one chamber, with fans in one leg into it and one out of it at most. */
function isSimple(plan: Plan): boolean {
  const withFans = plan.filter(({ letters }) => letters.includes('B'));
  const inward = withFans.filter(({ from }) => from === 0).length;
  return plan.every(({ from, to }) => from + to === 1) && inward <= 1 && withFans.length - inward <= 1;
}

/**
 * Plans with a number of places for fans, some of them made up on the spot.
 *
 * @param random source of numbers
 * @param banks 1 to 3
 * @param simple only those with one chamber and fans in one leg into it and one out of it at most
 */
export function plansWith(random: Random, banks: number, simple: boolean): readonly Plan[] {
  const known = PLANS.map(parsed).filter((plan) => banksIn(plan) === banks);
  const made = Array.from({ length: Math.ceil(known.length / 2) }, () => scattered(random, banks));
  const all = [...known.map((plan) => turned(random, plan)), ...made];
  return simple ? all.filter(isSimple) : all;
}
