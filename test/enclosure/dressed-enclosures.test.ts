import { describe, expect, it } from 'vitest';
import { dutyOutcome } from '../../src/enclosure/duty-outcome.ts';
import type { Machine } from '../../src/enclosure/machine.ts';
import type { DutyOutcome } from '../../src/enclosure/outcome.ts';
import { HOPELESS } from '../../src/heat/part-temperature.ts';
import { createTrial, isAdequate } from '../../src/search/trial.ts';
import { between, oneOf, seededRandom } from '../airway/seeded-random.ts';
import { dressed, sumOf } from './dressed.ts';
import { dutyOf } from './hand-made.ts';
import { randomDress } from './random-dress.ts';
import { randomDrawing } from './random-enclosure.ts';

const SEED = 77;

interface Solved {
  readonly machine: Machine;
  readonly ratios: Float64Array;
  readonly outcome: DutyOutcome;
}

const random = seededRandom(SEED);
const solved = Array.from({ length: 300 }).flatMap((): Solved[] => {
  const drawing = randomDrawing(random);
  const machine = dressed(drawing, randomDress(random, drawing));
  const ratios = Float64Array.from(machine.banks, () => oneOf(random, [0.3, 1, between(random, 0.2, 1)]));
  const outcome = dutyOutcome(machine, dutyOf(machine), ratios);
  return typeof outcome === 'string' ? [] : [{ machine, ratios, outcome }];
});

/** Nothing is hot beyond use and all air moves: what conservation can be checked on. */
function isCalm({ outcome }: Solved): boolean {
  return (
    outcome.parts.every(({ temperature }) => temperature < 450) &&
    outcome.legs.every(({ massFlow }) => Math.abs(massFlow) > 1e-5)
  );
}

describe('random enclosures with pipes, bases, leakage and walls', () => {
  it('nearly all have an outcome, some of them refused', () => {
    expect(solved.length).toBeGreaterThan(240);
    expect(solved.filter(({ outcome }) => outcome.failures.length > 0).length).toBeGreaterThan(10);
    expect(solved.filter(isCalm).length).toBeGreaterThan(60);
  });

  it('hold numbers only', () => {
    // What the program promises.
    for (const { outcome } of solved) {
      for (const { temperature, power, loopGain, wholeLoopGain = 0, probe = 0 } of outcome.parts) {
        for (const value of [temperature, power, loopGain, wholeLoopGain, probe]) {
          expect(Number.isFinite(value)).toBe(true);
        }
        expect(temperature).toBeLessThanOrEqual(2 * HOPELESS);
      }
    }
  });

  it('have budgets that sum to the temperatures', () => {
    for (const { outcome } of solved) {
      for (const { rise, temperature } of outcome.parts) {
        expect(Math.abs(sumOf(rise) - (temperature - outcome.room))).toBeLessThan(1e-6 + 1e-9 * temperature);
      }
    }
  });

  it('carry out the heat by air and walls', () => {
    // Conservation of energy; the nominal leak of 1e-10 kg/s takes a little.
    for (const entry of solved.filter(isCalm)) {
      const { heat, heatCarried } = entry.outcome;
      const given = heat.reduce((sum, { amount }) => sum + Math.max(0, amount), 0);
      expect(Math.abs(sumOf(heat) - heatCarried)).toBeLessThan(1e-6 * given + 1e-7);
    }
  });

  it('have no part colder than its air, no probe colder than that or hotter than the part', () => {
    // Second law.
    const AIR = ['own exhaust drawn in again', 'air warmed on its way', 'air of the chamber'];
    for (const { outcome } of solved) {
      for (const { temperature, probe = temperature, rise } of outcome.parts) {
        const air = outcome.room + sumOf(rise.filter(({ label }) => AIR.includes(label)));
        expect(air).toBeGreaterThanOrEqual(outcome.room - 1e-6);
        // Where nothing moves, air and part are beyond all measure, and the part is cut off at that.
        if (temperature >= HOPELESS) continue;
        expect(probe).toBeGreaterThanOrEqual(air - 1e-6);
        expect(probe).toBeLessThanOrEqual(temperature + 1e-9);
      }
    }
  });

  it('are adequate to the search exactly where they are in the outcome', () => {
    // One judgement, two readers: apart from a hair at the limit.
    let adequate = 0;
    for (const { machine, ratios, outcome } of solved) {
      const point = createTrial(machine, dutyOf(machine)).evaluate(ratios);
      if (point.failure || Math.abs(point.worst) < 1e-4) continue;
      if (outcome.adequate) adequate += 1;
      expect(isAdequate(point)).toBe(outcome.adequate);
    }
    expect(adequate).toBeGreaterThan(30);
  });
});
