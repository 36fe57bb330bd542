import { describe, expect, it } from 'vitest';
import { describeBuild } from '../../src/enclosure/describe.ts';
import { dutyOutcome } from '../../src/enclosure/duty-outcome.ts';
import type { Bank, Enclosure, Place } from '../../src/enclosure/enclosure.ts';
import { withLostFans } from '../../src/enclosure/lost-fans.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import type { BankOutcome, DutyOutcome } from '../../src/enclosure/outcome.ts';
import { FAN_ASSUMPTIONS } from '../../src/fan/fan-assumptions.ts';
import { bracketedRoot } from '../../src/numerics/roots.ts';
import { noticesOf } from '../../src/presentation/notices.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { solveBuild } from '../../src/search/solve-build.ts';
import { elementPlace, enclosureOf, fans, fanWith, lossOfForm, ZERO } from './hand-made.ts';

const LOSS = 5e4;
/** In square laws the density does not matter to volume flows; pressures go with it. */
const DENSITY_RATIO = 101_325 / (287.053 * 298.15) / 1.2;

function root(f: (x: number) => number, low: number, high: number): number {
  const found = bracketedRoot(f, low, high, { tolerance: 1e-14 });
  if (!found.ok) throw new Error(found.reason);
  return found.root;
}

/** Two parabolic fans of 40 Pa and 0.03 m³/s side by side that blow through a loss. */
function box(power = 0): Enclosure {
  const bank = fans(fanWith({ power, price: 10 }), 2, { id: 'exit' });
  return enclosureOf({
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [] },
      { from: 1, to: 0, through: [bank, elementPlace(lossOfForm(0, LOSS))] },
    ],
  });
}

const BUILD = [0, 0];

function outcomeOf(enclosure: Enclosure, ratio = 1): DutyOutcome {
  const machine = assemble(plantOf(enclosure), BUILD);
  const [duty] = enclosure.duties;
  if (!duty) throw new RangeError('a hand-made enclosure has one duty');
  const outcome = dutyOutcome(machine, duty, new Float64Array(machine.banks.length).fill(ratio));
  if (typeof outcome === 'string') throw new Error(outcome);
  return outcome;
}

function bankOf(outcome: DutyOutcome): BankOutcome {
  const [bank] = outcome.banks;
  if (!bank) throw new RangeError('there is one bank');
  return bank;
}

const withDead = (dead: number, missing = 0, power = 0) =>
  withLostFans(box(power), BUILD, [{ place: 0, dead, missing }]);

describe('a bank of two with one fan dead', () => {
  it('works where the other fan feeds the box and the dead fan', () => {
    // Derived, x = p/p0: Q0·(√(1 − x) − √x) goes through the loss, √(p0·x/R).
    const x = root(
      (share) => 0.03 * (Math.sqrt(1 - share) - Math.sqrt(share)) - Math.sqrt((40 * share) / LOSS),
      0,
      1,
    );
    const bank = bankOf(outcomeOf(withDead(1)));
    expect(bank.pressureRise / (40 * x * DENSITY_RATIO)).toBeCloseTo(1, 7);
    expect(bank.flow / (0.03 * (Math.sqrt(1 - x) - Math.sqrt(x)))).toBeCloseTo(1, 7);
    expect(bank.lost?.flow).toBeCloseTo(-0.03 * Math.sqrt(x), 9);
    expect(bank.flowShare).toBeCloseTo(Math.sqrt(1 - x), 7);
  });

  it('moves less air than one fan in a bank of one', () => {
    // Derived: a single fan on this loss moves 0.0205798 m³/s; the open way back takes of it.
    expect(bankOf(outcomeOf(withDead(1))).flow).toBeLessThan(0.0205798);
  });

  it('costs the power and makes the noise of one fan, and still has two', () => {
    // Two equal sources are 3.01 dB above one; here both terms change with the working point, which is the same.
    const whole = bankOf(outcomeOf(box(1.5)));
    const half = outcomeOf(withDead(1, 0, 1.5));
    expect(bankOf(half).power).toBeCloseTo(whole.power / 2, 9);
    expect(whole.power).toBeGreaterThan(2);
    expect(bankOf(half).count).toBe(1);
    const description = describeBuild(withDead(1), BUILD);
    expect(description.fanCount).toBe(2);
    expect(description.price).toBe(20);
    expect(description.places[0]?.holds).toBe('invented x2 with 1 dead');
    expect(half.level).toBeLessThan(outcomeOf(box()).level);
  });

  it('says so in words, with the air that flows back', () => {
    const [sentence] = noticesOf(outcomeOf(withDead(1)));
    expect(sentence).toMatch(/^exit \(invented\) has 1 dead of 2 fans: [\d.]+ m³\/h flow back through/);
  });

  it('has speeds that can be solved', () => {
    const enclosure = withDead(1);
    const solved = solveBuild(assemble(plantOf(enclosure), BUILD), fasterIsCooler(plantOf(enclosure)));
    expect(solved.duties[0]?.point.failure).toBeNull();
  });
});

describe('a bank with a fan missing', () => {
  it('leaves a hole that lets air back', () => {
    // Derived, as above with the hole's resistance K·ρ/(2A²), K 2.85 on the blade circle of 0.96 · 92 mm.
    const area = (Math.PI / 4) * (0.96 * 0.092) ** 2;
    const hole = (FAN_ASSUMPTIONS.lost.hole * 1.2) / (2 * area ** 2);
    const p = root(
      (rise) => 0.03 * Math.sqrt(1 - rise / 40) - Math.sqrt(rise / hole) - Math.sqrt(rise / LOSS),
      0,
      40,
    );
    const bank = bankOf(outcomeOf(withDead(0, 1)));
    expect(bank.pressureRise / (p * DENSITY_RATIO)).toBeCloseTo(1, 7);
    expect(bank.lost?.flow).toBeCloseTo(-Math.sqrt(p / hole), 9);
  });

  it('counts the fans that are there', () => {
    expect(describeBuild(withDead(0, 1), BUILD).fanCount).toBe(1);
    expect(describeBuild(withDead(0, 1), BUILD).places[0]?.holds).toBe('invented x2 with 1 missing');
  });
});

describe('a bank of which no fan turns', () => {
  it('is a resistance, without noise and power', () => {
    // A second bank drives air through it: Derived: √(p0/(R + p0/Q0² + (p0/Q0²)/4)).
    const exit = fans(fanWith(), 2, { id: 'exit' });
    const driver = fans(fanWith(), 1, { id: 'push' });
    const through: readonly Place[] = [driver, exit, elementPlace(lossOfForm(0, LOSS))];
    const enclosure = enclosureOf({
      inner: 1,
      legs: [
        { from: 0, to: 1, through },
        { from: 1, to: 0, through: [] },
      ],
      room: 25 + ZERO,
    });
    const lost = withLostFans(enclosure, [0, 0, 0], [{ place: 1, dead: 2, missing: 0 }]);
    const machine = assemble(plantOf(lost), [0, 0, 0]);
    const [duty] = lost.duties;
    const outcome = duty && dutyOutcome(machine, duty, Float64Array.of(1, 1));
    if (!outcome || typeof outcome === 'string') throw new Error(outcome);
    const own = 40 / 0.03 ** 2;
    const [push, dead] = outcome.banks;
    expect((push?.flow ?? 0) / Math.sqrt(40 / (LOSS + 1.25 * own))).toBeCloseTo(1, 6);
    expect(dead?.lost?.flow).toBeCloseTo(push?.flow ?? Number.NaN, 9);
    expect([dead?.count, dead?.power, dead?.flowShare, dead?.stalled]).toEqual([0, 0, 0, false]);
    expect(outcome.sources.map(({ source }) => source)).toEqual(['push']);
    expect(noticesOf(outcome).some((text) => text.includes('has 2 dead of 2 fans'))).toBe(true);
    const solved = solveBuild(machine, fasterIsCooler(plantOf(lost)));
    expect(solved.duties[0]?.point.failure).toBeNull();
  });
});

describe('losing fans', () => {
  it('adds up, and changes only the option that the build has', () => {
    const bank: Bank = { fan: fanWith(), count: 3 };
    const place: Place = { ...fans(fanWith()), options: [null, bank, bank] };
    const enclosure = enclosureOf({
      inner: 1,
      legs: [
        { from: 0, to: 1, through: [place] },
        { from: 1, to: 0, through: [] },
      ],
    });
    const first = withLostFans(enclosure, [1], [{ place: 0, dead: 1, missing: 0 }]);
    const second = withLostFans(first, [1], [{ place: 0, dead: 0, missing: 1 }]);
    const [changed] = second.places;
    expect(changed?.options).toEqual([null, { ...bank, count: 1, lost: { dead: 1, missing: 1 } }, bank]);
    expect(withLostFans(enclosure, [1], [{ place: 0, dead: 0, missing: 0 }])).toEqual(enclosure);
  });

  it('is refused beyond the fans there are', () => {
    expect(() => withDead(2, 1)).toThrow(RangeError);
    expect(() => withDead(-1)).toThrow(RangeError);
    expect(() => withDead(0.5)).toThrow(RangeError);
    expect(() => withLostFans(box(), BUILD, [{ place: 1, dead: 1, missing: 0 }])).toThrow(RangeError);
  });
});
