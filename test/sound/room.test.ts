import { describe, expect, it } from 'vitest';
import {
  absorptionArea,
  pressureOverPowerInRoom,
  reverberantRadius,
  roomRise,
} from '../../src/sound/room.ts';

describe('room', () => {
  it('reproduces the printed value of VDI 2081', () => {
    // Published: phonometry, page on VDI 2081, prints 5.7 dB; digits computed.
    const drop = -pressureOverPowerInRoom({ distance: 1.5, directivity: 2, absorption: 20 });
    expect(Math.abs(drop - 5.7)).toBeLessThan(0.05);
    expect(drop).toBeCloseTo(5.6745, 4);
  });

  it('reproduces the printed value of a handbook example with the room constant', () => {
    // Published: phonometry, page on the duct path, prints 6.6 dB; digits computed.
    const drop = -pressureOverPowerInRoom({ distance: 1.83, directivity: 2, absorption: 23.6 });
    expect(Math.abs(drop - 6.6)).toBeLessThan(0.05);
    expect(drop).toBeCloseTo(6.6351, 4);
  });

  // Computed: 40 + 10 lg(Q/(4πr²) + 4/A).
  it.each([
    { distance: 1, absorption: 10, directivity: 2, level: 37.4753 },
    { distance: 1, absorption: 20, directivity: 2, level: 35.5528 },
    { distance: 1, absorption: 10, directivity: 1, level: 36.8086 },
    { distance: 2, absorption: 10, directivity: 2, level: 36.4324 },
  ] as const)('40 dB at $distance m in $absorption m²', ({ level, ...place }) => {
    expect(40 + pressureOverPowerInRoom(place)).toBeCloseTo(level, 4);
  });

  it('adds 5.57 dB at 1 m in a furnished room of 30 m³', () => {
    const absorption = absorptionArea(30, 0.5);
    expect(absorption).toBeCloseTo(9.66, 10); // computed: 0.161 V/T
    expect(roomRise({ distance: 1, directivity: 2, absorption })).toBeCloseTo(5.565, 3); // computed
  });

  it('adds 3 dB at the reverberant radius', () => {
    const distance = reverberantRadius(2, 10);
    expect(distance).toBeCloseTo(0.6308, 4); // computed; VDI 2081 prints 0.2 √A = 0.632
    expect(reverberantRadius(2, 20)).toBeCloseTo(0.8921, 4); // computed
    expect(roomRise({ distance, directivity: 2, absorption: 10 })).toBeCloseTo(3.0103, 4); // derived
  });

  it('gives nothing back of what a source sends elsewhere', () => {
    // Derived: in the open a directivity index counts whole; in a room only the direct part is raised.
    const open = { distance: 2, directivity: 2, absorption: Number.POSITIVE_INFINITY } as const;
    expect(pressureOverPowerInRoom({ ...open, index: 4 })).toBeCloseTo(pressureOverPowerInRoom(open) + 4, 10);
    expect(roomRise({ ...open, index: 4 })).toBeCloseTo(0, 10);
    const far = { distance: 100, directivity: 2, absorption: 10 } as const;
    expect(pressureOverPowerInRoom({ ...far, index: 4 })).toBeCloseTo(10 * Math.log10(0.4), 2);
  });

  it('refuses a room without absorption', () => {
    expect(() => pressureOverPowerInRoom({ distance: 1, directivity: 2, absorption: 0 })).toThrow(RangeError);
  });
});
