import { describe, expect, it } from 'vitest';
import { scenario } from './good-scenario.ts';
import { SCENARIO } from './samples.ts';

describe('the room temperature', () => {
  // Definition of the scales: −40 °C is −40 °F, 233.15 K, and 158 °F are 70 °C.
  it.each([
    ['-40 °C', 233.15],
    ['-40 °F', 233.15],
    ['158 °F', 343.15],
  ])('may be at the end of its range, %s', (room, kelvins) => {
    const text = SCENARIO.replace('room: 26 °C', `room: ${room}`).replace('air: 50 °C', 'air: 90 °C');
    const rooms = scenario(text).enclosure.duties.map((duty) => duty.room);
    expect(rooms[0]).toBeCloseTo(kelvins, 6);
  });
});
