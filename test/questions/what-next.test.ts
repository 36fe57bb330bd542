import { describe, expect, it } from 'vitest';
import { perforatedElement } from '../../src/elements/perforated.ts';
import { readPerforatedSheet } from '../../src/elements/perforated-sheet.ts';
import { flowShareOf } from '../../src/questions/flow-share.ts';
import { levers } from '../../src/questions/levers/levers.ts';
import { whatNext } from '../../src/questions/what-next.ts';
import { wouldDo } from '../../src/questions/would-do.ts';
import { elementPlace, enclosureOf, fans, fanWith, lossOfForm, ZERO } from '../enclosure/hand-made.ts';
import { outcomeOf, scannerLevel, solvedFully, solvedScanner } from './changed-scanner.ts';

/** One part in a chamber that a fan at the exhaust draws air through a sheet for. */
function boxWith(limit: number, resistance: number, changes: { readonly power?: number } = {}) {
  const sheet = readPerforatedSheet({ perforated: '60 x 40 mm', hole: '3 mm', web: '2 mm', sheet: '1 mm' });
  const enclosure = enclosureOf({
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [elementPlace(perforatedElement(sheet), 'vent')] },
      { from: 1, to: 0, through: [fans(fanWith()), elementPlace(lossOfForm(100, 5e4), 'way out')] },
    ],
    parts: [
      { power: changes.power ?? 60, in: 1, resistance, limits: [{ of: 'part', temperature: limit + ZERO }] },
    ],
  });
  const build = enclosure.places.map(() => 0);
  return { enclosure, build, outcome: outcomeOf(solvedFully(enclosure, build)), fans: [] };
}

describe('each change', () => {
  const { situation } = solvedScanner({});
  const next = whatNext(situation);
  const found = (lever: string, at: string) =>
    next.changes.find((each) => each.lever === lever && each.at === at);

  // Another route to the same box: the change is written into the scenario's text, read and solved.
  it.each<readonly [string, string, Readonly<Record<string, string>>]>([
    [
      'no filter',
      'dust',
      {
        '[front, dust, push,': '[front, push,',
        '  dust: { screen: 95 x 95 mm, open: 55 %, wire: 0.2 mm }': '',
      },
    ],
    ['larger field', 'front', { 'front: { perforated: 95 x 95 mm': 'front: { perforated: 116 x 116 mm' }],
    ['larger field', 'rear', { 'rear: { perforated: 170 x 85 mm': 'rear: { perforated: 208 x 104 mm' }],
    ['narrower webs', 'rear', { 'hole: 5 mm, web: 2 mm': 'hole: 5 mm, web: 1.5 mm' }],
    [
      'larger holes',
      'front',
      { 'front: { perforated: 95 x 95 mm, hole: 4 mm': 'front: { perforated: 95 x 95 mm, hole: 6 mm' },
    ],
    ['better contact', 'processor', { 'fixed: 0.16 K/W': 'fixed: 0.08 K/W' }],
    ['cooler room', 'room', { 'room: 26 °C': 'room: 24 °C', 'room: 35 °C': 'room: 33 °C' }],
    [
      'larger fan',
      'pull',
      {
        'pull: { bank: fans, face: 92 mm': 'pull: { bank: fans, face: 120 mm',
        'pull: { fans: catalog': 'pull: { fans: [q120-15-c]',
        'as-built: { push: s92-15-b x1, pull: empty, exit: f80-25-b x2, rear: 5 mm }': '# none',
        'pull: s92-15-e x1': 'pull: q120-15-c x1',
      },
    ],
  ])('"%s" at %s gains what it does when it is written into the scenario', (lever, at, changes) => {
    const change = found(lever, at);
    const level = scannerLevel(changes);
    expect(change?.level).toBeCloseTo(level, 3);
    expect(change?.quieter).toBeCloseTo(situation.outcome.level - level, 3);
  });

  it('is of some use, and the best stands first', () => {
    const gains = next.changes.map(({ quieter }) => quieter ?? Number.NaN);
    expect(gains).toEqual([...gains].sort((one, other) => other - one));
    // What gains nothing is left out; the rounding of speeds is worth less than this. No source.
    expect(Math.min(...gains)).toBeGreaterThan(-0.05);
    expect(next.tried).toBeGreaterThan(next.changes.length);
  });

  it('is the same when it is looked for again', () => {
    expect(whatNext(solvedScanner({}).situation)).toEqual(next);
  });

  it('says what it costs', () => {
    const notes = (lever: string, at: string): string => found(lever, at)?.notes.join(' ') ?? '';
    expect(notes('no filter', 'dust')).toContain('dust');
    expect(notes('larger holes', 'front')).toContain('ISO 13857');
    const larger = found('larger fan', 'pull');
    const price = (id: string): number => situation.fans.find((fan) => fan.id === id)?.price ?? Number.NaN;
    expect(larger?.price).toBeCloseTo(price('q120-15-c') - price('s92-15-e'), 9);
    const thicker = found('thicker fan', 'pull');
    expect(thicker?.depth).toBeCloseTo(0.038 - 0.016, 9);
  });
});

describe('kelvins at equal noise', () => {
  it('are those that a better contact takes away, since the air stays as it is', () => {
    // Derived: half of 0.5 K/W at 60 W is 15 K, the speeds being those that make the noise of before.
    const next = whatNext(boxWith(75, 0.5));
    const change = next.changes.find(({ lever }) => lever === 'better contact');
    expect(change?.cooler).toBeCloseTo(0.5 * 0.5 * 60, 1);
  });

  it('are those of a cooler room, but for the density of its air', () => {
    const change = whatNext(boxWith(75, 0.5)).changes.find(({ lever }) => lever === 'cooler room');
    // Derived: 2 K of the room one to one, and a little for denser air.
    expect(change?.cooler).toBeGreaterThan(2);
    expect(change?.cooler).toBeLessThan(2.2);
  });
});

describe('where little depends on flow', () => {
  it('the share that does is that of the air', () => {
    const { outcome } = boxWith(90, 0.9);
    const [part] = outcome.duties[0]?.parts ?? [];
    const air = (part?.temperature ?? 0) - 60 * 0.9 - (25 + ZERO);
    expect(flowShareOf(outcome)).toBeCloseTo(air / (air + 54), 9);
  });

  it('more fan is not what it begins with', () => {
    // Heat pipes that no air can change leave under a third of the rise to it; fans of the catalog would gain most decibels.
    const { situation } = solvedScanner({
      'fixed: 0.16 K/W': 'pipes: { count: 4, capacity: 4000 W, resistance: 0.45 K/W }',
      'limit: 85 °C': 'limit: 140 °C',
      'limit: { air: 50 °C }': 'limit: { air: 70 °C }',
    });
    const next = whatNext(situation);
    expect(next.flowShare).toBeLessThan(1 / 3);
    expect(next.changes.some(({ isFan }) => isFan)).toBe(true);
    expect(next.changes[0]?.isFan).toBe(false);
    expect(next.fansHeldBack).toBe(true);
    expect(next.changes[1]?.quieter).toBeGreaterThan(next.changes[0]?.quieter ?? 0);
  });
});

describe('a build that is too warm', () => {
  it('is told the cheapest single change that would do', () => {
    const box = boxWith(38, 0.1);
    expect(box.outcome.adequate).toBe(false);
    const { change } = wouldDo(box);
    expect(change?.adequate).toBe(true);
    // Cutting comes before a larger field, a larger field before another room: all of them would do here.
    expect(change?.effort).toBe('cut');
  });

  it('is told none where none would do', () => {
    const { change, tried } = wouldDo(boxWith(26, 5));
    expect(change).toBeUndefined();
    // Fewer than there are levers; no source.
    expect(tried).toBeGreaterThan(10);
  });
});

it('every lever has a name of its own', () => {
  const names = levers.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
});
