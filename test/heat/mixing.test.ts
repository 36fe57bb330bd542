import { describe, expect, it } from 'vitest';
import { STAGNANT_FLOW } from '../../src/heat/stagnant-air.ts';
import { CP, ROOM, rises } from './mixed-air.ts';

const CFM = 4.719474e-4;

/** Density of dry air at sea level. Source: ideal gas, R = 287.05287 J/(kg·K), US Standard Atmosphere 1976. */
function dryDensity(temperature: number): number {
  return 101_325 / (287.05287 * temperature);
}

describe('one chamber', () => {
  const flow = dryDensity(ROOM) * 30 * CFM;

  it('warms the air by P/(ṁ·cp)', () => {
    // Derived: 220 W, 30 CFM entering at 25 °C give 13.0464 K.
    const [, rise] = rises({
      chambers: 2,
      legs: [
        [0, 1, flow],
        [1, 0, flow],
      ],
      heat: [0, 220],
    });
    expect(rise).toBeCloseTo(13.0464, 4);
  });

  it('does so wherever the heat comes in on the way', () => {
    // Derived: heat in the leg before the chamber warms it, heat in the leg behind it does not.
    const [, rise] = rises({
      chambers: 2,
      legs: [
        [0, 1, flow, 150],
        [1, 0, flow, 1000],
      ],
      heat: [0, 70],
    });
    expect(rise).toBeCloseTo(13.0464, 4);
  });

  it('warms it by more if the volume is measured at the warm outlet', () => {
    // Derived: 220 W at 20 CFM give 20.9443 K if the 20 CFM leave, 19.5696 K if they enter.
    const riseAt = (massFlow: number) =>
      rises({
        chambers: 2,
        legs: [
          [0, 1, massFlow],
          [1, 0, massFlow],
        ],
        heat: [0, 220],
      })[1] ?? Number.NaN;
    expect(riseAt(dryDensity(ROOM) * 20 * CFM)).toBeCloseTo(19.5696, 4);
    let rise = 0;
    for (let round = 0; round < 60; round++) rise = riseAt(dryDensity(ROOM + rise) * 20 * CFM);
    expect(rise).toBeCloseTo(20.9443, 3);
  });

  it('takes the mean of the streams that enter, by mass', () => {
    // Derived: 0.01 kg/s warmed by 60 W and 0.02 kg/s by nothing, 30 W in the chamber: 90/(0.03·1006) K.
    const [, rise] = rises({
      chambers: 2,
      legs: [
        [0, 1, 0.01, 60],
        [0, 1, 0.02],
        [1, 0, 0.03],
      ],
      heat: [0, 30],
    });
    expect(rise).toBeCloseTo(90 / (0.03 * CP), 7);
  });

  it('does not care which way a leg was drawn', () => {
    // Symmetry: a leg against the stream has a negative flow.
    const drawn = rises({
      chambers: 2,
      legs: [
        [1, 0, -0.01, 60],
        [1, 0, -0.02],
        [0, 1, -0.03],
      ],
      heat: [0, 30],
    });
    expect(drawn[1]).toBeCloseTo(90 / (0.03 * CP), 7);
  });
});

describe('several chambers', () => {
  it('two in a chain, the second behind the first', () => {
    // Derived: 100 W then 50 W into 0.01 kg/s.
    const found = rises({
      chambers: 3,
      legs: [
        [0, 1, 0.01],
        [1, 2, 0.01],
        [2, 0, 0.01],
      ],
      heat: [0, 100, 50],
    });
    expect(found[1]).toBeCloseTo(100 / (0.01 * CP), 6);
    expect(found[2]).toBeCloseTo(150 / (0.01 * CP), 6);
  });

  it('two with a leak into the second and a bypass out of the first', () => {
    // Derived: the first 0.02 kg/s with 80 W, half of it on; the second adds 0.005 kg/s of room air and 20 W.
    const found = rises({
      chambers: 3,
      legs: [
        [0, 1, 0.02],
        [1, 0, 0.01],
        [1, 2, 0.01],
        [0, 2, 0.005],
        [2, 0, 0.015],
      ],
      heat: [0, 80, 20],
    });
    const first = 80 / (0.02 * CP);
    expect(found[1]).toBeCloseTo(first, 6);
    expect(found[2]).toBeCloseTo((0.01 * first + 20 / CP) / 0.015, 6);
  });

  it('two that pass air back and forth', () => {
    // Derived: T1·(0.01 + 0.004) = 0.004·T2 + Q1/cp and T2·0.014 = 0.014·T1 + Q2/cp.
    const found = rises({
      chambers: 3,
      legs: [
        [0, 1, 0.01],
        [1, 2, 0.014],
        [2, 1, 0.004],
        [2, 0, 0.01],
      ],
      heat: [0, 30, 70],
    });
    const first = (30 + (0.004 * 70) / 0.014) / (0.01 * CP);
    expect(found[1]).toBeCloseTo(first, 6);
    expect(found[2]).toBeCloseTo(first + 70 / (0.014 * CP), 6);
    expect(found[2]).toBeCloseTo(100 / (0.01 * CP), 6);
  });

  it('three, two of them feeding the third', () => {
    // Derived: 60 W into 0.01 kg/s, 20 W into 0.02 kg/s, then 40 W into both, and 10 W in a leg between.
    const found = rises({
      chambers: 4,
      legs: [
        [0, 1, 0.01],
        [0, 2, 0.02],
        [1, 3, 0.01, 10],
        [2, 3, 0.02],
        [3, 0, 0.03],
      ],
      heat: [0, 60, 20, 40],
    });
    expect(found[1]).toBeCloseTo(60 / (0.01 * CP), 6);
    expect(found[2]).toBeCloseTo(20 / (0.02 * CP), 6);
    expect(found[3]).toBeCloseTo(130 / (0.03 * CP), 6);
  });

  it('three in a ring that takes in and gives off at one point', () => {
    // Derived: the ring carries 0.05 kg/s, the room 0.01; each chamber is warmer than the one before by Q/(0.05·cp).
    const found = rises({
      chambers: 4,
      legs: [
        [0, 1, 0.01],
        [1, 2, 0.05],
        [2, 3, 0.05],
        [3, 1, 0.04],
        [3, 0, 0.01],
      ],
      heat: [0, 0, 25, 50],
    });
    const last = 75 / (0.01 * CP);
    expect(found[3]).toBeCloseTo(last, 5);
    expect(found[2]).toBeCloseTo(last - 50 / (0.05 * CP), 5);
    expect(found[1]).toBeCloseTo(last - 75 / (0.05 * CP), 5);
  });
});

describe('recirculation', () => {
  const flow = 0.015;
  const watts = 15 * flow * CP;

  // Derived: T_in − T_room = f/(1 − f)·ΔT for ΔT 15 K; definition of the share by the Open DCME model (published).
  it.each([
    [0.05, 0.789474],
    [0.1, 1.66667],
    [0.2, 3.75],
    [0.3, 6.42857],
    [0.5, 15],
  ])('of a share of %d warms the intake by %d K', (share, preheat) => {
    const found = rises({
      chambers: 2,
      legs: [
        [0, 1, flow, 0, share],
        [1, 0, flow],
      ],
      heat: [0, watts],
    });
    expect(found[1]).toBeCloseTo(15 + preheat, 4);
    expect(found[2]).toBeCloseTo(15 / (1 - share), 4);
    expect(share * (found[2] ?? Number.NaN)).toBeCloseTo(preheat, 4);
  });

  it('of 25 °C room, 28 °C intake and 40 °C exhaust is a share of 0.2', () => {
    // Derived: (28 − 25)/(40 − 25), turned round: 12 K by the heat, 15 K at the exhaust.
    const found = rises({
      chambers: 2,
      legs: [
        [0, 1, flow, 0, 0.2],
        [1, 0, flow],
      ],
      heat: [0, 12 * flow * CP],
    });
    expect(found[1]).toBeCloseTo(15, 5);
  });

  it('of air that turns back half way brings back half of the warming', () => {
    // Derived: T_in = (1 − f)·T_room + f·(T_in + φ·ΔT), so f·φ/(1 − f)·ΔT: 1.875 K for f 0.2, φ 0.5 and ΔT 15 K.
    const found = rises({
      chambers: 3,
      legs: [
        [0, 1, 0.8 * flow],
        [1, 2, flow, 0.5 * watts],
        [2, 1, 0.2 * flow],
        [2, 0, 0.8 * flow, 0.5 * watts],
      ],
    });
    expect(found[1]).toBeCloseTo(1.875, 9);
    expect((found[2] ?? Number.NaN) - 1.875).toBeCloseTo(7.5, 9);
  });

  it('takes the mean of all that leaves, leaks and cold streams included', () => {
    // Derived: half of the exhaust is cold, so half the share comes back: T_in = g/(1 − g)·ΔT with g = 0.1.
    const found = rises({
      chambers: 3,
      legs: [
        [0, 1, flow, 0, 0.2],
        [1, 0, flow],
        [0, 2, flow],
        [2, 0, flow],
      ],
      heat: [0, watts],
    });
    expect((found[1] ?? Number.NaN) - 15).toBeCloseTo((0.1 / 0.9) * 15, 5);
    expect(found[2]).toBeCloseTo(0, 6);
    expect(found[3]).toBeCloseTo(((15 / 0.9) * flow) / (2 * flow), 5);
  });

  it('counts the heat given off in the leg that leaves', () => {
    // Derived: the exhaust is what has passed everything.
    const found = rises({
      chambers: 2,
      legs: [
        [0, 1, flow, 0, 0.25],
        [1, 0, flow, watts],
      ],
    });
    expect(found[2]).toBeCloseTo(20, 5);
    expect(found[1]).toBeCloseTo(5, 5);
  });

  it('is off while its leg flows outward', () => {
    // Decided: there is nothing it could draw in.
    const found = rises({
      chambers: 2,
      legs: [
        [0, 1, -flow, 0, 0.5],
        [1, 0, -flow],
      ],
      heat: [0, watts],
    });
    expect(found[1]).toBeCloseTo(15, 5);
  });

  it('needs no chamber: a single leg through the box', () => {
    // Derived: as in one chamber.
    const found = rises({ chambers: 1, legs: [[0, 0, flow, watts, 0.2]] });
    expect(found[1]).toBeCloseTo(15 / 0.8, 5);
  });

  it('grows without limit as the share nears 1', () => {
    // Derived: 1/(1 − f).
    const found = rises({
      chambers: 2,
      legs: [
        [0, 1, flow, 0, 0.999],
        [1, 0, flow],
      ],
      heat: [0, watts],
    });
    expect((found[1] ?? Number.NaN) / 15_000).toBeCloseTo(1, 4);
  });
});

describe('where no air moves', () => {
  it('the heat spreads into a trickle and stays finite', () => {
    // Assumption, named: each of the two legs exchanges 1e-7 kg/s.
    const found = rises({
      chambers: 2,
      legs: [
        [0, 1, 0],
        [1, 0, 0],
      ],
      heat: [0, 1],
    });
    expect((found[1] ?? Number.NaN) / (1 / (2 * STAGNANT_FLOW * CP))).toBeCloseTo(1, 9);
  });

  it('a chamber with one opening loses its heat by it, and the room gets all of it', () => {
    // Derived: the air that comes in by the exchange goes out again; the next chamber carries the heat on.
    const found = rises({
      chambers: 3,
      legs: [
        [0, 1, 0.01],
        [1, 0, 0.01],
        [2, 1, 1e-19],
      ],
      heat: [0, 100, 5],
    });
    expect((found[1] ?? Number.NaN) / (105 / (0.01 * CP))).toBeCloseTo(1, 9);
    const above = (found[2] ?? Number.NaN) - (found[1] ?? Number.NaN);
    expect(above / (5 / (STAGNANT_FLOW * CP))).toBeCloseTo(1, 9);
  });

  it('the exchange fades out as the air begins to move, whichever way', () => {
    // Derived: 20 W in a chamber between two legs; forward they carry it at once, at the flow of the exchange and beyond.
    const warm = (flow: number) =>
      rises({
        chambers: 2,
        legs: [
          [0, 1, flow],
          [1, 0, flow],
        ],
        heat: [0, 20],
      })[1] ?? Number.NaN;
    for (const flow of [1e-7, 1e-6, 1e-3]) expect(warm(flow) / (20 / (flow * CP))).toBeCloseTo(1, 9);
    expect(warm(0.5e-7) / (20 / (1.5e-7 * CP))).toBeCloseTo(1, 9);
    expect(warm(-1e-6) / (20 / (1e-6 * CP))).toBeCloseTo(1, 9);
  });

  it('no temperature jumps where a leg with heat turns round, and all of it goes with the air again soon', () => {
    // Derived: 5 W in a leg, 20 W in the chamber, 0.004 kg/s pushed through it. Leaving with the air the 5 W do not count,
    // entering with it they do, at rest half of them, and in between evenly up to 5e-5 kg/s (assumption of the model).
    const riseAt = (flow: number) =>
      rises({
        chambers: 2,
        legs: [
          [0, 1, 0.004],
          [1, 0, flow, 5],
          [1, 0, 0.004 - flow],
        ],
        heat: [0, 20],
      })[1] ?? Number.NaN;
    const through = 0.004 * CP;
    expect(riseAt(1e-4)).toBeCloseTo(20 / through, 6);
    expect(riseAt(5e-5)).toBeCloseTo(20 / through, 6);
    expect(riseAt(2.5e-5)).toBeCloseTo(21.25 / through, 6);
    expect(riseAt(0)).toBeCloseTo(22.5 / through, 3);
    expect(riseAt(-2.5e-5)).toBeCloseTo(23.75 / (through + 2.5e-5 * CP), 6);
    expect(riseAt(-1e-4)).toBeCloseTo(25 / (through + 1e-4 * CP), 6);
    for (let flow = -1e-4; flow < 1e-4; flow += 1e-6) {
      expect(Math.abs(riseAt(flow + 1e-6) - riseAt(flow))).toBeLessThan(0.05);
    }
  });

  it('a chamber nothing leads to stays finite, and its neighbours right', () => {
    // Theory: what nothing joins cannot warm the rest.
    const found = rises({
      chambers: 3,
      legs: [
        [0, 1, 0.01],
        [1, 0, 0.01],
      ],
      heat: [0, 100, 5],
    });
    expect(found[1]).toBeCloseTo(100 / (0.01 * CP), 6);
    expect(Number.isFinite(found[2])).toBe(true);
    expect(found[2]).toBeGreaterThan(1000);
  });
});
