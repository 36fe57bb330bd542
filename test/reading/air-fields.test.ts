import { describe, expect, it } from 'vitest';
import { place, scenario } from './good-scenario.ts';
import { changed } from './marked.ts';
import { SCENARIO } from './samples.ts';

/** The sample with something changed. */
const altered = (from: string, to: string) => scenario(changed(SCENARIO, from, to)).enclosure;

describe('walls close to fans', () => {
  it('are read in metres, each on its side', () => {
    // Contract of the file.
    const enclosure = altered('depth: 26 mm }', 'depth: 26 mm, inlet-wall: 12 mm, outlet-wall: 2 cm }');
    const exit = place(enclosure, 'exit');
    expect(exit).toMatchObject({ inletWall: 0.012, outletWall: 0.02 });
  });

  it('are absent unless said', () => {
    // Contract of the file.
    expect(place(scenario(SCENARIO).enclosure, 'exit')).not.toHaveProperty('inletWall');
  });
});

describe('the height of a leg', () => {
  it('is read in metres, up or down', () => {
    // Contract of the file.
    const end = 'through: [side-gap] }';
    expect(altered(end, 'through: [side-gap], rise: 25 cm }').legs[1]?.rise).toBe(0.25);
    expect(altered(end, 'through: [side-gap], rise: -0.1 m }').legs[1]?.rise).toBe(-0.1);
    expect(scenario(SCENARIO).enclosure.legs[1]).not.toHaveProperty('rise');
  });
});

describe('fans of a build that do not turn', () => {
  const exit = 'exit: f80-25-b x2';

  it.each([
    ['exit: f80-25-b x2 with 1 dead', 1, 0],
    ['exit: "f80-25-b x2, 1 dead"', 1, 0],
    ['exit: f80-25-b x2 with 2 missing', 0, 2],
    ['exit: f80-25-b × 2 with 1 dead and 1 missing', 1, 1],
    ['exit: "f80-25-b x2, 1 missing, 1 dead"', 1, 1],
  ])('are read from %s', (text, dead, missing) => {
    // Contract of the file: the place is the seventh of the sample.
    const [build] = altered(exit, text).builds;
    expect(build).toEqual({
      id: 'as-built',
      options: [0, 0, 0, 0, 1, 0, 1, 1],
      lost: [{ place: 6, dead, missing }],
    });
  });

  it('are none unless said', () => {
    // Contract of the file.
    expect(scenario(SCENARIO).enclosure.builds[0]).not.toHaveProperty('lost');
  });
});

describe('the assumptions on installation and lost fans', () => {
  it('can be set one by one', () => {
    // Contract of the file: what is not named keeps its default.
    const fan =
      'fan: { derating-direct: 0.85, blade-circle: 0.95, wall: { outlet: 0 }, ' +
      'plenum: { sheet: { full-from: 0 } }, lost: { stopped: 3 } }';
    const { assumptions } = altered('fan: { derating-direct: 0.85 }', fan);
    expect(assumptions.fan).toMatchObject({
      deratingDirect: 0.85,
      bladeCircle: 0.95,
      hub: 0.35,
      wall: { reach: 0.5, inlet: 1, outlet: 0 },
      plenum: { sheet: { ringUpTo: 0.1, fullFrom: 0 }, deep: { ringUpTo: 0.25, fullFrom: 0.5 } },
      lost: { stopped: 3, hole: 2.85 },
    });
  });
});
