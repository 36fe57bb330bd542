import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dutyOutcome } from '../../src/enclosure/duty-outcome.ts';
import type { Duty } from '../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { controlPath, stateAt } from '../../src/questions/control-path.ts';
import { tellsTheWay } from '../../src/questions/control-thresholds.ts';
import { type ControllerTable, controllerTable } from '../../src/questions/controller-table.ts';
import { type LimitReader, limitReader } from '../../src/questions/limit-readings.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { type SolvedBuild, solveBuild } from '../../src/search/solve-build.ts';
import { changed, FANS, readBoth, TWO_FANS } from '../scenarios/two-fans.ts';

const SEED = 91;

/** The two fans with something to cool, in three duties. Invented. */
const WARM = changed(TWO_FANS, {
  'power: 0.001 W, on: stack, limit: 60 °C': 'power: 95 W, on: stack, limit: 50 °C',
  'builds: { as-drawn: {} }': `duties:
  - { duty: hot, share: 0 %, heat: 100 %, room: 35 °C }
  - { duty: rest, share: 60 %, heat: 20 % }
  - { duty: work, share: 40 %, heat: 80 % }`,
});

function solvedIn(scenario: string, catalog = FANS): SolvedBuild {
  const plant = plantOf(readBoth(scenario, catalog));
  const build = plant.enclosure.places.map(() => 0);
  return solveBuild(assemble(plant, build), fasterIsCooler(plant));
}

type Ladder = Extract<ControllerTable['ladder'], { ok: true }>;

function ladderOf(table: ControllerTable): Ladder {
  if (!table.ladder.ok) throw new Error(table.ladder.reason);
  return table.ladder;
}

/** What a build comes to on a rung, by the whole outcome: another way than that of the table. */
function outcomeOn({ machine }: SolvedBuild, { sensor, rungs }: Ladder, duty: Duty, rung: number) {
  const ratios = Float64Array.from(rungs[rung]?.speeds ?? [], ({ ratio }) => ratio);
  const outcome = dutyOutcome(machine, duty, ratios);
  if (typeof outcome === 'string') throw new Error(outcome);
  const limits = outcome.parts.find(({ part }) => part === sensor.subject)?.limits;
  const temperature = limits?.find(({ of }) => of === sensor.of)?.found ?? Number.NaN;
  return { temperature, adequate: outcome.adequate };
}

/** A controller that goes one rung at a time and waits until all has settled; null if it hunts. */
function settles(
  solved: SolvedBuild,
  ladder: Ladder,
  duty: Duty,
  start: number,
  off: (count: number) => number = () => 0,
): number | null {
  const { rungs } = ladder;
  let rung = start;
  for (let count = 0; count < 3 * rungs.length; count++) {
    const read = outcomeOn(solved, ladder, duty, rung).temperature + off(count);
    if (read > (rungs[rung + 1]?.from ?? Number.POSITIVE_INFINITY)) rung += 1;
    else if (read < (rungs[rung]?.back ?? Number.NEGATIVE_INFINITY)) rung -= 1;
    else return rung;
  }
  return null;
}

const solved = solvedIn(WARM);
const table = controllerTable(solved);

describe('what a controller is set to', () => {
  it('has the quietest speeds for each duty, in percent and revolutions', () => {
    expect(table.duties.map(({ duty, adequate }) => [duty, adequate])).toEqual([
      ['hot', true],
      ['rest', true],
      ['work', true],
    ]);
    table.duties.forEach(({ speeds }, index) => {
      const ratio = solved.duties[index]?.point.ratios[0] ?? Number.NaN;
      expect(speeds).toEqual([{ ratio, speed: expect.closeTo((ratio * 2000) / 60, 9) }]);
    });
  });

  it('has the floors of each bank', () => {
    // Contract of the file: hold 20 %; start is 10 % more if not said.
    const [bank] = table.banks;
    expect(bank).toMatchObject({ place: 'pair', fan: 'e92', count: 2, avoid: [] });
    expect(bank?.holdFloor).toEqual({ ratio: 0.2, speed: expect.closeTo(400 / 60, 9) });
    expect(bank?.startFloor.ratio).toBeCloseTo(0.3, 12);
  });
});

describe('the ladder of speeds over temperature', () => {
  const ladder = ladderOf(table);
  const path = controlPath(solved, limitReader(solved.machine), 1);

  it('reads what is nearest to its limit', () => {
    expect(ladder.sensor).toEqual({ subject: 'lamp', of: 'part', limit: expect.closeTo(323.15, 9) });
  });

  it('rises in speed and in temperature, and comes back below', () => {
    const { rungs } = ladder;
    expect(rungs.length).toBeGreaterThan(2);
    expect(rungs[0]).not.toHaveProperty('from');
    rungs.slice(1).forEach((rung, index) => {
      const before = rungs[index];
      expect(rung.speeds[0]?.ratio).toBeGreaterThan(before?.speeds[0]?.ratio ?? Number.NaN);
      expect(rung.from).toBeGreaterThanOrEqual((before?.from ?? 0) + 1 - 1e-9);
      expect(rung.from).toBeLessThanOrEqual(323.15);
      expect(rung.back).toBeLessThan(rung.from ?? Number.NaN);
    });
  });

  it('asks banks to be started first where they turn slower than they start', () => {
    for (const { speeds, startFirst } of ladder.rungs) {
      expect(startFirst).toEqual((speeds[0]?.ratio ?? 1) < 0.3 ? ['pair'] : []);
    }
    expect(ladder.rungs[0]?.startFirst).toEqual(['pair']);
  });

  it('settles at any heat, wherever it comes from, and holds every limit there', () => {
    // Brute force: the controller is played through.
    const place = fc.double({ min: 0, max: path.length - 1, noNaN: true });
    fc.assert(
      fc.property(place, fc.nat(ladder.rungs.length - 1), (at, start) => {
        const duty = stateAt(path, at);
        const rung = settles(solved, ladder, duty, start);
        expect(rung).not.toBeNull();
        expect(outcomeOn(solved, ladder, duty, rung ?? 0).adequate).toBe(true);
      }),
      { seed: SEED, numRuns: 80 },
    );
  });

  it('does not hunt because its sensor is half a kelvin off now and then', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: path.length - 1, noNaN: true }), fc.boolean(), (at, first) => {
        const off = (count: number) => (count % 2 === (first ? 0 : 1) ? 0.5 : -0.5);
        for (const start of [0, ladder.rungs.length - 1]) {
          expect(settles(solved, ladder, stateAt(path, at), start, off)).not.toBeNull();
        }
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  it('would hunt without the drop in its hysteresis', () => {
    // So the check above can fail.
    const narrow = {
      ...ladder,
      rungs: ladder.rungs.map((rung) =>
        rung.from === undefined ? rung : { ...rung, back: rung.from - 0.1 },
      ),
    };
    const places = Array.from({ length: 40 }, (_, index) => ((path.length - 1) * index) / 40);
    expect(places.some((at) => settles(solved, narrow, stateAt(path, at), 0) === null)).toBe(true);
  });

  it('tells on which rung each duty runs, and how loud that is', () => {
    expect(ladder.duties.map(({ duty }) => duty)).toEqual(['hot', 'rest', 'work']);
    for (const { duty, rung, level } of ladder.duties) {
      const state = path.find(({ id }) => id === duty);
      if (!state) throw new Error('each duty is on the path');
      expect(rung).toBe(settles(solved, ladder, state, 0));
      const ratios = Float64Array.from(ladder.rungs[rung]?.speeds ?? [], ({ ratio }) => ratio);
      const outcome = dutyOutcome(solved.machine, state, ratios);
      expect(level).toBeCloseTo(typeof outcome === 'string' ? Number.NaN : outcome.level, 4);
    }
  });

  it('comes back by what going up takes off, and by what the sensor is off', () => {
    // Derived: where going up just happens, the next rung settles lower by the drop.
    const [, second] = ladder.rungs;
    let [low, high] = [0, path.length - 1];
    for (let count = 0; count < 50; count++) {
      const middle = (low + high) / 2;
      const { temperature } = outcomeOn(solved, ladder, stateAt(path, middle), 0);
      if (temperature > (second?.from ?? 0)) high = middle;
      else low = middle;
    }
    const settled = outcomeOn(solved, ladder, stateAt(path, low), 1).temperature;
    expect(second?.drop).toBeCloseTo((second?.from ?? 0) - settled, 3);
    expect(second?.back).toBeCloseTo(settled - 1, 3);
  });
});

describe('bands to avoid', () => {
  const banded = solvedIn(
    changed(WARM, { 'inlet-gap: 10 mm }': 'inlet-gap: 10 mm, avoid: [[500 rpm, 900 rpm]] }' }),
  );

  it('hold no speed of the table, nor the speed to start at', () => {
    const found = controllerTable(banded);
    const speeds = [
      ...found.duties.flatMap((duty) => duty.speeds),
      ...ladderOf(found).rungs.flatMap((rung) => rung.speeds),
      ...found.banks.map(({ startFloor }) => startFloor),
    ];
    for (const { speed } of speeds) {
      expect(speed * 60 <= 500 + 1e-6 || speed * 60 >= 900 - 1e-6).toBe(true);
    }
    // 30 % of 2000 rpm would lie in the band.
    expect(found.banks[0]?.startFloor.ratio).toBeCloseTo(0.45, 9);
    expect(found.banks[0]?.avoid).toEqual([{ from: expect.closeTo(500 / 60), to: expect.closeTo(15) }]);
  });

  it('do not make it hunt', () => {
    const ladder = ladderOf(controllerTable(banded));
    const path = controlPath(banded, limitReader(banded.machine), 1);
    for (let step = 0; step <= 20; step++) {
      const duty = stateAt(path, ((path.length - 1) * step) / 20);
      const rung = settles(banded, ladder, duty, step % ladder.rungs.length);
      expect(rung).not.toBeNull();
      expect(outcomeOn(banded, ladder, duty, rung ?? 0).adequate).toBe(true);
    }
  });
});

describe('where there is no ladder', () => {
  const reasonIn = (changes: Readonly<Record<string, string>>): string => {
    const { ladder } = controllerTable(solvedIn(changed(WARM, changes)));
    return ladder.ok ? 'there is one' : ladder.reason;
  };

  it('it is said why', () => {
    expect(reasonIn({ ', limit: 50 °C': '' })).toBe('no limit');
    expect(reasonIn({ 'limit: 50 °C': 'limit: 36 °C' })).toBe('not adequate');
    expect(reasonIn({ '{ fans: [e92], count: 2 }': '{ fans: [e92], count: 2, empty: allowed }' })).toBe(
      'no banks',
    );
  });

  it('a temperature that falls on the way does not tell what is asked', () => {
    const duty = (id: string): Duty => ({ id, share: 0, heat: [1], room: 298.15 });
    const path = ['one', 'two', 'three'].map(duty);
    const told = (temperatures: readonly number[]) => {
      const read: LimitReader = (state) => {
        const found = temperatures[path.findIndex(({ id }) => id === state.id)] ?? Number.NaN;
        return [{ subject: 'lamp', of: 'part', limit: 350, found }];
      };
      const ladder = { read, path, rungs: [{ upTo: 2, ratios: [0.5] }] };
      return tellsTheWay(ladder, { subject: 'lamp', of: 'part', limit: 350 });
    };
    expect(told([300, 310, 320])).toBe(true);
    expect(told([300, 310, 309])).toBe(false);
    expect(told([300, Number.NaN, 320])).toBe(false);
  });

  it('fixed speeds are told all the same', () => {
    const { duties } = controllerTable(solvedIn(changed(WARM, { ', limit: 50 °C': '' })));
    expect(duties.map(({ speeds }) => speeds[0]?.ratio)).toEqual([0.2, 0.2, 0.2]);
  });
});
