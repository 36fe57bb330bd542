import { describe, expect, it } from 'vitest';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { plain } from '../../src/presentation/paint.ts';
import { rankView } from '../../src/presentation/rank-view.ts';
import { rank } from '../../src/search/rank.ts';
import { bankPlace, elementPlace, enclosureOf, fanWith, lossOfForm } from '../enclosure/hand-made.ts';

/** One part without a limit, too much for any of the choices: no fan, one, and two of them abreast. */
function tooMuch(slope: number): Enclosure {
  const bank = bankPlace([null, { fan: fanWith(), count: 2 }, { fan: fanWith(), count: 1 }]);
  return enclosureOf({
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [bank] },
      { from: 1, to: 0, through: [elementPlace(lossOfForm(0, 2e5))] },
    ],
    parts: [{ power: 300, in: 1, resistance: 2, slope }],
  });
}

describe('the nearest miss without any limit', () => {
  // Derived: 300 W over 2 K/W are 600 K; at 1 % of 300 W for each kelvin the loop gain is 6, whatever the air.
  it.each([
    [0, 'gets hotter than the 217 °C that such a part is taken to bear'],
    [0.01, 'it runs away'],
  ])('is the build that moves most air, with a slope of %d', (slope, words) => {
    const ranking = rank(tooMuch(slope));
    expect(ranking.rows).toEqual([]);
    expect(ranking.nearestMiss?.outcome.duties[0]?.banks[0]?.count).toBe(2);
    expect(ranking.nearestMiss?.reason).toContain(words);
    expect(rankView(ranking, { width: undefined, paint: plain, tie: 1 })).toContain(words);
  });
});
