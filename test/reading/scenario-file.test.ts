import { describe, expect, it } from 'vitest';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { bare, optionsOf, place, scenario } from './good-scenario.ts';
import { changed } from './marked.ts';
import { SCENARIO } from './samples.ts';
import { fans } from './scenario-cases.ts';

describe('a good scenario', () => {
  const { enclosure, readings } = scenario(SCENARIO);

  it('has title, listener, margin and site', () => {
    expect(enclosure).toMatchObject({
      title: 'Film scanner, desk side, 7 litre',
      listener: { distance: 1, background: 25 },
      margin: 2,
      site: { relativeHumidity: 0.5 },
    });
    // Published: US Standard Atmosphere 1976, 300 m: 97 773 Pa (from memory).
    expect(enclosure.site.pressure).toBeCloseTo(97_773, -1);
  });

  it('has chambers and legs that refer to places in the order of the file', () => {
    expect(enclosure.chambers).toEqual(['outside', 'core']);
    expect(enclosure.places.map(({ id }) => id)).toEqual([
      'front',
      'dust',
      'stack',
      'side-gap',
      'push',
      'pull',
      'exit',
      'rear',
    ]);
    expect(enclosure.legs).toEqual([
      { id: 'intake', from: 0, to: 1, through: [0, 1, 4, 2, 5], recirculation: 0.05 },
      { id: 'gap-round-stack', from: 0, to: 1, through: [3], recirculation: 0 },
      { id: 'exhaust', from: 1, to: 0, through: [6, 7], recirculation: 0 },
    ]);
  });

  it('has the options of every place, the empty one first and fans in order', () => {
    expect(optionsOf(enclosure, 'front')).toEqual(['']);
    expect(optionsOf(enclosure, 'push')).toEqual(['empty', 's92-15-a x1', 's92-16-c x1']);
    expect(optionsOf(enclosure, 'pull')).toEqual(['empty', 's92-15-a x1']);
    expect(optionsOf(enclosure, 'exit')).toEqual(['f80-25-b x1', 'f80-25-b x2']);
    expect(optionsOf(enclosure, 'rear')).toEqual(['hole 4 mm', 'hole 5 mm', 'hole 6 mm']);
    expect(place(enclosure, 'pull')).toMatchObject({ depth: 0.016, inletGap: 0.003, outletGap: 0 });
  });

  it('has parts with their seats and limits', () => {
    expect(enclosure.parts).toEqual([
      {
        id: 'processor',
        power: 95,
        slope: 0.004,
        powerAt: 323.15,
        seat: { kind: 'fins', place: 2 },
        resistance: 0.16,
        limits: [{ of: 'part', temperature: 358.15 }],
      },
      {
        id: 'board',
        power: 22,
        slope: 0,
        powerAt: 323.15,
        seat: { kind: 'chamber', chamber: 1 },
        resistance: 0,
        limits: [{ of: 'air', temperature: 323.15 }],
      },
    ]);
  });

  it('has duties, builds and readings', () => {
    expect(enclosure.duties).toEqual([
      { id: 'idle', share: 0.7, heat: [0.3, 0.3], room: 299.15 },
      { id: 'work', share: 0.3, heat: [1, 0.5], room: 299.15 },
      { id: 'hot day', share: 0, heat: [1, 1], room: 308.15 },
    ]);
    expect(enclosure.builds).toEqual([{ id: 'as-built', options: [0, 0, 0, 0, 1, 0, 1, 1] }]);
    expect(readings).toMatchObject([
      {
        id: 'panel on',
        build: 0,
        without: [],
        wall: 151,
        probes: [{ of: 'part', index: 0, temperature: 334.15 }],
      },
      { id: 'panel off', build: 0, without: [0, 1], room: 299.15, probes: [{ of: 'chamber', index: 1 }] },
    ]);
    expect(readings.map(({ speeds }) => speeds[4])).toEqual([1, 0.6]);
    expect(readings[1]).not.toHaveProperty('wall');
  });

  it('has assumptions: those given, and the defaults beside them', () => {
    const { sound, fan } = enclosure.assumptions;
    expect([sound.fanFloor, sound.installation.inlet.panel, fan.deratingDirect]).toEqual([12, 3, 0.85]);
    expect([sound.speedExponent, sound.installation.inlet.wall, fan.deratingAcrossFins]).toEqual([
      55, 4, 0.9,
    ]);
  });
});

describe('assumptions', () => {
  it('replace a list as a whole', () => {
    const given = 'sound: { working-point: [{ flow-share: 0.2, rise: 6, uncertainty: 3 }], ';
    const { workingPoint, fanFloor } = scenario(changed(SCENARIO, 'sound: { ', given)).enclosure.assumptions
      .sound;
    expect(workingPoint).toEqual([{ flowShare: 0.2, rise: 6, uncertainty: 3 }]);
    expect(fanFloor).toBe(12);
  });

  it('may be words', () => {
    const { sound } = scenario(changed(SCENARIO, 'sound: { ', 'sound: { power-field: half, ')).enclosure
      .assumptions;
    expect(sound.powerField).toBe('half');
  });
});

describe('what may be left out', () => {
  it('is filled in', () => {
    const short = bare
      .slice(0, bare.indexOf('choices:'))
      .replace(/title:.*\n/, '')
      .replace('face: 80 mm', 'face: 92 mm')
      .replace(', altitude: 300 m', '')
      .replace(', background: 25 dB(A)', '');
    const { enclosure, readings } = scenario(short);
    expect(enclosure).toMatchObject({ title: '', margin: 0, builds: [], site: { pressure: 101_325 } });
    expect(enclosure.listener).toEqual({ distance: 1 });
    expect(enclosure.duties).toEqual([{ id: 'full', share: 1, heat: [1, 1], room: 299.15 }]);
    expect(readings).toEqual([]);
    // A bank without a choice may hold any one fan that fits.
    expect(optionsOf(enclosure, 'push')).toEqual(['s92-15-a x1', 's92-16-c x1']);
  });

  it('is the altitude where the pressure is given, and a limit', () => {
    const text = changed(
      changed(bare, 'altitude: 300 m', 'pressure: 98 kPa, humidity: 40 %'),
      ', limit: 85 °C',
      '',
    );
    expect(scenario(text).enclosure).toMatchObject({
      site: { pressure: 98_000, relativeHumidity: 0.4 },
      parts: [{ limits: [] }, {}],
    });
  });
});

describe('the order of things', () => {
  it('does not depend on the order of the catalog', () => {
    const one = readScenario('f', SCENARIO, fans);
    const other = readScenario('f', SCENARIO, [...fans].reverse());
    expect(JSON.stringify(other)).toBe(JSON.stringify(one));
  });

  it('makes shares sum to one exactly enough', () => {
    const text = changed(changed(bare, 'share: 70 %', 'share: 66.7 %'), 'share: 30 %', 'share: 33 %');
    const shares = scenario(text).enclosure.duties.map(({ share }) => share);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
  });
});
