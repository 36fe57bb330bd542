import { describe, expect, it } from 'vitest';
import { dutyOutcome } from '../../src/enclosure/duty-outcome.ts';
import type { BankOutcome, DutyOutcome } from '../../src/enclosure/outcome.ts';
import { curveFromPoints } from '../../src/fan/curve.ts';
import { noticesOf } from '../../src/presentation/notices.ts';
import { dutyOf, elementPlace, fans, fanWith, lossOfForm, machineOf } from './hand-made.ts';

/** Points with a dip of stall, its last peak at 18 L/s. */
const dipped = curveFromPoints({
  flows: [0, 0.005, 0.01, 0.015, 0.018, 0.022, 0.026, 0.03],
  pressures: [40, 33, 25, 22, 24, 21, 12, 0],
});

/** A fan with a dip on a square loss [Pa·s²/m⁶]. */
function onLoss(loss: number, size = 0.092, ratio = 1): DutyOutcome {
  const fan = fanWith({ curve: dipped, size });
  const machine = machineOf({
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [fans(fan), elementPlace(lossOfForm(0, loss))] },
      { from: 1, to: 0, through: [] },
    ],
  });
  const outcome = dutyOutcome(machine, dutyOf(machine), Float64Array.of(ratio));
  if (typeof outcome === 'string') throw new Error(outcome);
  return outcome;
}

function bankOf(outcome: DutyOutcome): BankOutcome {
  const [bank] = outcome.banks;
  if (!bank) throw new RangeError('there is one bank');
  return bank;
}

describe('a fan in the dip of its curve', () => {
  // Roots of the lower envelope on this loss, computed with SciPy 1.10 PchipInterpolator: 17.7281 and 20.7374 L/s.
  it('left of its last peak is flagged as stalled, with its working point', () => {
    const bank = bankOf(onLoss(7e4));
    expect(bank.flow / 0.0177281).toBeCloseTo(1, 3);
    expect(bank.stalled).toBe(true);
    expect(bank.flowShare).toBeCloseTo(0.0177281 / 0.03, 3);
    expect(bank.rawPressureRise).toBeGreaterThan(bank.pressureRise + 1);
  });

  it('has its curve with the working point to be drawn, as long as it is stalled', () => {
    const bank = bankOf(onLoss(7e4));
    expect(bank.shape?.working.flow).toBeCloseTo(bank.flow, 12);
    expect(bank.shape?.working.counted).toBeCloseTo(bank.pressureRise, 9);
    expect(bank.shape?.working.raw).toBeCloseTo(bank.rawPressureRise ?? Number.NaN, 9);
    expect(bank.shape?.peakFlow).toBeCloseTo(0.018, 12);
    expect(bankOf(onLoss(5e4))).not.toHaveProperty('shape');
  });

  it('right of it is not stalled', () => {
    const bank = bankOf(onLoss(5e4));
    expect(bank.flow / 0.0207374).toBeCloseTo(1, 4);
    expect(bank.stalled).toBe(false);
  });

  it('far right of it has no other pressure by its points', () => {
    expect(bankOf(onLoss(1e4))).not.toHaveProperty('rawPressureRise');
  });

  it('is told in words', () => {
    const sentences = noticesOf(onLoss(7e4));
    expect(sentences[0]).toMatch(/^bank \(invented\) runs stalled/);
    expect(sentences[1]).toMatch(
      /works in the dip of its curve: its points give [\d.]+ Pa, counted are [\d.]+ Pa\.$/,
    );
  });
});

describe('where the fan laws are uncertain', () => {
  // Model assumption, no source: below 30 % of the speed, or smaller than 40 mm.
  it('it is said of slow fans', () => {
    expect(noticesOf(onLoss(1e4, 0.092, 0.29)).join(' ')).toContain('below 30 % speed');
    expect(noticesOf(onLoss(1e4, 0.092, 0.3)).join(' ')).not.toContain('uncertain');
  });

  it('it is said of small fans', () => {
    expect(noticesOf(onLoss(1e4, 0.038)).join(' ')).toContain('smaller than 40 mm');
    expect(noticesOf(onLoss(1e4, 0.04)).join(' ')).not.toContain('uncertain');
  });
});
