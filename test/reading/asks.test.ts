import { describe, expect, it } from 'vitest';
import { bare, scenario } from './good-scenario.ts';

function read(lines: string) {
  return scenario(`${bare}${lines}\n`).enclosure;
}

// What the text says, in SI by definition.
describe('what is asked of builds', () => {
  it('is nothing if nobody asks', () => {
    const { asks, headers } = read('');
    expect([asks, headers]).toEqual([undefined, undefined]);
  });

  it('is read in SI', () => {
    const { asks } = read(
      'ask: { price: 40, fan-power: 2500 mW, models: 2, level: 3.1 B, dead-fan: survived, stall: never, back-flow: never, tone-points: 1 }',
    );
    expect(asks).toEqual({
      price: 40,
      ratedPower: 2.5,
      models: 2,
      level: 31,
      deadFan: true,
      noStall: true,
      noBackFlow: true,
      tonePoints: 1,
    });
  });

  it('is a depth of every leg with fans, or of those that are named', () => {
    const whole = read('ask: { depth: 5 cm }');
    const named = read('ask: { depth: { exhaust: 30 mm } }');
    const legOf = (id: string) => whole.legs.findIndex((leg) => leg.id === id);
    expect(whole.asks?.depths).toEqual([
      { leg: legOf('intake'), most: 0.05 },
      { leg: legOf('exhaust'), most: 0.05 },
    ]);
    expect(named.asks?.depths).toEqual([{ leg: legOf('exhaust'), most: 0.03 }]);
  });

  it('is told of headers by the places they feed', () => {
    const { headers, places } = read(
      'headers: { cooler: { banks: [push, pull], current: 800 mA, voltage: 12 V } }',
    );
    const at = (id: string) => places.findIndex((place) => place.id === id);
    expect(headers).toEqual([
      { id: 'cooler', places: [at('push'), at('pull')], current: { most: 0.8, voltage: 12 } },
    ]);
  });
});
