import { describe, expect, it } from 'vitest';
import { bestFlow, characterOf, freeDelivery, fullSpeedLevel, pressureAt, shutOff } from './fan-character.ts';
import { shippedFamilies, type WrittenFan } from './written-fan.ts';

const fans = shippedFamilies().flatMap((family) => family.fans);

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Fans of a frame and, unless '', of the line with this letter. */
function fansOf(frame: string, letter = ''): WrittenFan[] {
  return fans.filter((fan) => `${fan.size}x${fan.depth}` === frame && fan.id.startsWith(letter));
}

describe('levels', () => {
  // Common practice, no source: ordinary fans hung free, 1 m.
  it.each([
    ['120x25', 1200, 20],
    ['120x25', 2000, 32],
    ['92x25', 2000, 25],
    ['80x25', 2500, 27],
    ['60x25', 3500, 30],
    ['40x20', 6000, 32],
  ])('of ordinary %s fans at %i rpm are near %i dB(A)', (frame, rpm, level) => {
    const atSpeed = fansOf(frame, 'f').map(
      (fan) => fullSpeedLevel(fan) + 55 * Math.log10(rpm / 60 / fan.speed),
    );
    expect(Math.abs(mean(atSpeed) - level)).toBeLessThan(1.5);
  });

  // Common practice, no source: shallow frames pay for their depth with noise.
  it.each([60, 80, 92, 120])('of slim %i mm fans are higher at the same free delivery', (size) => {
    const perFlow = (frame: string, letter: string) =>
      mean(fansOf(frame, letter).map((fan) => fullSpeedLevel(fan) - 55 * Math.log10(freeDelivery(fan))));
    const excess = perFlow(`${size}x15`, 's') - perFlow(`${size}x25`, 'f');
    expect(excess).toBeGreaterThan(0.5);
    expect(excess).toBeLessThan(4);
  });

  // Common practice, no source: what a maker calls quiet is so at the same speed, steep blades are not.
  it.each(['60x15', '60x25', '80x15', '80x25', '92x15', '92x25', '120x15', '120x25'])(
    'of quiet fans are lowest and of pressure fans highest at the same tip speed: %s',
    (frame) => {
      const constant = (letter: string) =>
        mean(fansOf(frame, letter).flatMap((fan) => characterOf(fan).noiseConstants));
      const ordinary = frame.endsWith('15') ? 's' : 'f';
      expect(constant('q')).toBeLessThan(constant(ordinary) - 1);
      expect(constant('p')).toBeGreaterThan(constant(ordinary) + 0.3);
    },
  );

  // Published: VDI 2081 part 1 gives Lw = 42 + 10 lg Q + 20 lg Δp for axial fans near their best point
  // (Q in m³/s, Δp total in Pa, spread 2 dB, up to 7 dB for a poor fan). Small fans lie below it (common
  // practice, no source), but not without bound.
  it('stay within the law for ventilation fans and not far below it', () => {
    for (const fan of fans) {
      const flow = bestFlow(fan);
      const law = 42 + 10 * Math.log10(flow) + 20 * Math.log10(pressureAt(fan, flow));
      const power = fullSpeedLevel(fan) + 10 * Math.log10(4 * Math.PI);
      expect(power - law, fan.id).toBeLessThan(7);
      expect(power - law, fan.id).toBeGreaterThan(-20);
    }
  });
});

describe('a search', () => {
  /** Level [dB] at which a fan moves `flow` against `resistance`·flow², or nothing if it cannot. */
  function levelOn(fan: WrittenFan, flow: number, resistance: number): number {
    const shares = Array.from({ length: 400 }, (_, i) => (i + 1) / 400);
    const share = shares.find((x) => {
      const own = x * freeDelivery(fan);
      return pressureAt(fan, own) <= resistance * own ** 2;
    });
    const ratio = flow / ((share ?? 1) * freeDelivery(fan));
    return ratio > 1 ? Number.POSITIVE_INFINITY : fullSpeedLevel(fan) + 55 * Math.log10(ratio);
  }

  it.each(['60x15', '80x15', '80x25', '92x15', '92x25', '120x15', '120x25'])(
    'finds no line of frame %s the best for every task',
    (frame) => {
      const members = fansOf(frame).filter((fan) => !fan.boxOnly);
      const usual = mean(members.map(freeDelivery));
      const stiffness = mean(members.map((fan) => shutOff(fan) / freeDelivery(fan) ** 2));
      const winners = [0.3, 0.6, 0.9].flatMap((load) =>
        [0.1, 1, 5].map((k) => {
          const flow = (load * usual) / Math.sqrt(1 + k);
          const levels = members.map((fan) => levelOn(fan, flow, k * stiffness));
          return members[levels.indexOf(Math.min(...levels))]?.line;
        }),
      );
      expect(new Set(winners).size).toBeGreaterThanOrEqual(2);
    },
  );
});
