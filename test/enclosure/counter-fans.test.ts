import { describe, expect, it } from 'vitest';
import { ASSUMPTIONS } from '../../src/enclosure/assumptions.ts';
import type { BankPlace } from '../../src/enclosure/enclosure.ts';
import type { Turn } from '../../src/fan/fan-model.ts';
import { legBanks } from '../../src/search/leg-banks.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { bankPlace, elementPlace, enclosureOf, fans, fanWith, lossOfForm, machineOf } from './hand-made.ts';

/** Without the panel term. */
const HUNG_FREELY = { ...ASSUMPTIONS, sound: { ...ASSUMPTIONS.sound, panelMounting: 0 } };

function turning(turn: Turn | undefined, inletGap = 0, outletGap = 0): BankPlace {
  return fans(fanWith(turn === undefined ? {} : { turns: turn }), 1, { inletGap, outletGap });
}

/** Installation term of each bank of a path [dB]. */
function terms(...places: readonly BankPlace[]): readonly number[] {
  const legs = [
    { from: 0, to: 1, through: places },
    { from: 1, to: 0, through: [] },
  ];
  return machineOf({ inner: 1, legs, assumptions: HUNG_FREELY }).banks.map(
    ({ installation }) => installation,
  );
}

// Model assumption, no source for the sizes: touching, a fan behind another +3 dB, or +5 dB if it turns the other way,
// and then +1 dB on the one before. That counter-rotating pairs are louder is published (JSME 1994, two-stage fans).
describe('a pair of fans in series', () => {
  it('that turns opposite ways is louder, both of it', () => {
    expect(terms(turning('clockwise'), turning('anticlockwise'))).toEqual([1, 5]);
    expect(terms(turning('anticlockwise'), turning('clockwise'))).toEqual([1, 5]);
  });

  it.each([
    ['clockwise', 'clockwise'],
    ['clockwise', undefined],
    [undefined, 'anticlockwise'],
    [undefined, undefined],
  ] as const)('is taken to turn one way unless both say otherwise: %s, %s', (first, second) => {
    expect(terms(turning(first), turning(second))).toEqual([0, 3]);
  });

  it('is the less louder the further apart', () => {
    // Derived: ΔL0·exp(-g/(0.15 D)) with each fan's own clear distance.
    const fade = Math.exp(-0.02 / (SOUND_ASSUMPTIONS.gapScale * 0.092));
    const [before, behind] = terms(turning('clockwise', 1, 0.02), turning('anticlockwise', 0.02, 1));
    expect(before).toBeCloseTo(fade, 9);
    expect(behind).toBeCloseTo(5 * fade, 9);
  });

  it('is promised no more than its mildest neighbour makes it', () => {
    // The bound must take the least over all that may stand before: 3 dB, although 5 dB stands first in the list.
    const first = bankPlace(
      (['anticlockwise', 'clockwise'] as const).map((turns) => ({ fan: fanWith({ turns }), count: 1 })),
      { inletGap: 1, outletGap: 0 },
    );
    const second = turning('clockwise');
    const enclosure = enclosureOf({
      inner: 1,
      legs: [
        { from: 0, to: 1, through: [first, second] },
        { from: 1, to: 0, through: [] },
      ],
      assumptions: HUNG_FREELY,
    });
    const [, behind] = legBanks(enclosure, [0, 0], 0, {
      placed: new Map(),
      grids: new Map(),
      legs: new Map(),
    });
    expect(behind?.[0]?.placed.installation).toBe(3);
  });
});

describe('a bar, a cable or a board across a part of a face', () => {
  it('adds up to 3 dB before a fan and 1 dB behind it', () => {
    // Model assumption, no source: ΔL0·exp(-g/(0.15 D)).
    const at = (inletBar: number, outletBar: number) => terms(fans(fanWith(), 1, { inletBar, outletBar }))[0];
    expect(at(0, 1)).toBeCloseTo(3, 9);
    expect(at(1, 0)).toBeCloseTo(1, 9);
    expect(at(0.01, 1)).toBeCloseTo(3 * Math.exp(-0.01 / 0.0138), 9);
  });

  it('counts half beside something stronger, wherever it stands', () => {
    // Model assumption, no source: the strongest and half of the next.
    const panel = elementPlace({ ...lossOfForm(0, 10), disturbance: 'panel' });
    const barred = fans(fanWith(), 1, { inletGap: 0, inletBar: 0 });
    const machine = machineOf({
      inner: 1,
      legs: [
        { from: 0, to: 1, through: [panel, barred] },
        { from: 1, to: 0, through: [] },
      ],
      assumptions: HUNG_FREELY,
    });
    expect(machine.banks[0]?.installation).toBeCloseTo(4 + 3 / 2, 9);
  });
});
