import { describe, expect, it } from 'vitest';
import type { Build, Enclosure } from '../../src/enclosure/enclosure.ts';
import { rank } from '../../src/search/rank.ts';
import { beginSearch } from '../../src/search/search.ts';
import { shippedScenario } from '../scenarios/shipped.ts';
import { seeded } from './random.ts';
import { randomEnclosure } from './random-enclosure.ts';

/** The same enclosure with the fans of every place in another order. */
function shuffled(enclosure: Enclosure, seed: number): Enclosure {
  const random = seeded(seed);
  return {
    ...enclosure,
    builds: [],
    places: enclosure.places.map((place) => {
      if (place.kind !== 'bank') return place;
      const options = place.options.map((option) => ({ option, at: random.unit() }));
      return { ...place, options: options.sort((a, b) => a.at - b.at).map(({ option }) => option) };
    }),
  };
}

function namesOf({ places }: Enclosure, build: Build): readonly string[] {
  return places.map((place, index) => {
    const option = build[index] ?? 0;
    if (place.kind === 'element') return String(option);
    const bank = place.options[option];
    return bank ? `${bank.fan.id} x${bank.count}` : 'empty';
  });
}

/** Everything an answer says, with fans by name. */
function answerOf(enclosure: Enclosure) {
  const { rows, count } = rank(enclosure, { top: 5, gap: 0.01 });
  return {
    count,
    rows: rows.map(({ tie, outcome }) => ({
      tie,
      names: namesOf(enclosure, outcome.build.options),
      level: outcome.level,
      speeds: outcome.duties.map(({ banks }) => banks.map(({ ratio }) => ratio)),
    })),
  };
}

// Reference: the same question asked in another order has the same answer, to the last bit.
describe('the order of a catalog', () => {
  it('does not matter to a shipped scenario', () => {
    const enclosure = shippedScenario('open-amplifier');
    const answer = answerOf(enclosure);
    expect(answer.rows.length).toBe(5);
    for (const seed of [1, 2]) expect(answerOf(shuffled(enclosure, seed))).toEqual(answer);
  });

  it.each(Array.from({ length: 5 }, (_, index) => 9101 + index))('does not matter, seed %d', (seed) => {
    const simple = seed % 3 > 0;
    const enclosure = randomEnclosure(seed, { banks: simple ? 2 : 1, mostBuilds: 12, mostDuties: 2, simple });
    expect(answerOf(shuffled(enclosure, seed))).toEqual(answerOf(enclosure));
  });
});

describe('who looks at a set', () => {
  // Reference: three searches that share nothing but the enclosure take turns at the sets of each round.
  it('does not matter: strangers find the same', () => {
    const enclosure = shippedScenario('shelf-charger');
    const options = { top: 5, gap: 0.01 };
    const alone = beginSearch(enclosure, options);
    while (alone.step());
    const shared = beginSearch(enclosure, options);
    const others = [shared, beginSearch(enclosure, options), beginSearch(enclosure, options)];
    let turn = 0;
    for (let round = shared.round(); round; round = shared.round()) {
      const { task, sets, toBeat } = round;
      if (task === 'begin') continue;
      const findings = sets.map((set) => {
        turn += 1;
        // As between threads, nothing is handed over but plain data.
        return structuredClone(others[turn % 3]?.look(structuredClone(set), toBeat));
      });
      shared.take(findings.flatMap((finding) => finding ?? []));
    }
    expect(shared.counts()).toEqual(alone.counts());
    expect(shared.best()).toEqual(alone.best());
    expect(shared.best().length).toBeGreaterThan(1);
  });
});
