import { describe, expect, it } from 'vitest';
import { scenario } from './good-scenario.ts';
import { changed } from './marked.ts';
import { SCENARIO } from './samples.ts';

const PROCESSOR = 'fixed: 0.16 K/W, slope: 0.4 %/K, limit: 85 °C';

/** The sample's processor with other fields. */
function processor(fields: string) {
  return scenario(changed(SCENARIO, PROCESSOR, fields)).enclosure.parts[0];
}

/** The sample with more entries before its airway. */
function extended(lines: string) {
  return scenario(changed(SCENARIO, 'airway:', `${lines}\nairway:`)).enclosure;
}

describe('a part', () => {
  it('may name what its heat passes', () => {
    const part = processor(
      'pipes: { count: 4, capacity: 40 W, resistance: 0.06 K/W }, ' +
        'base: { footprint: 25 x 20 mm, plate: 90 x 80 mm, thickness: 3 mm, conductivity: 390 W/(m K) }, ' +
        'paste: { thickness: 30 um, conductivity: 8 W/(m K), area: 3 cm² }, fixed: 0.1 K/W',
    );
    expect(part).toMatchObject({
      resistance: 0.1,
      pipes: { count: 4, capacity: 40, resistance: 0.06 },
      base: {
        footprint: { width: 0.025, height: 0.02 },
        plate: { width: 0.09, height: 0.08 },
        thickness: 0.003,
        conductivity: 390,
      },
      slope: 0,
      limits: [],
    });
    expect(part?.paste).toEqual({ thickness: 30e-6, conductivity: 8, area: 3e-4 });
    expect(part).not.toHaveProperty('probe');
    expect(part).not.toHaveProperty('leakage');
  });

  it('has usual heat pipes and aluminium where nothing is said', () => {
    // Assumptions, no source.
    const part = processor(
      'pipes: { count: 2, capacity: 40 W }, base: { footprint: 25 mm, plate: 90 mm, thickness: 3 mm }',
    );
    expect([part?.pipes?.resistance, part?.base?.conductivity]).toEqual([0.05, 200]);
  });

  it('may have limits of three kinds, and a probe', () => {
    const part = processor('probe: 50 %, limit: { probe: 60 °C, part: 85 °C, air: 50 °C }');
    expect(part?.probe).toBe(0.5);
    expect(part?.limits).toEqual([
      { of: 'part', temperature: 358.15 },
      { of: 'air', temperature: 323.15 },
      { of: 'probe', temperature: 333.15 },
    ]);
  });

  it('may leak', () => {
    const part = processor('leakage: { power: 20 W, growth: 2 %/K }, at: 60 °C');
    expect(part).toMatchObject({ leakage: { power: 20, growth: 0.02 }, slope: 0, powerAt: 333.15 });
  });
});

describe('a supply', () => {
  it('inside makes of heat what it loses', () => {
    // Derived: 130 W at 90 %; the parts of the sample make 117 W.
    const { parts, duties } = extended(
      '  - { part: supply, in: core, wall: { reading: 130 W, efficiency: 90 % }, fixed: 0.8 K/W, limit: 90 °C }',
    );
    expect(parts[2]).toMatchObject({
      id: 'supply',
      seat: { kind: 'chamber', chamber: 1 },
      resistance: 0.8,
      limits: [{ of: 'part', temperature: 363.15 }],
      supply: { output: 117 },
    });
    expect(parts[2]?.power).toBeCloseTo(13, 9);
    expect(duties.map(({ heat }) => heat[2])).toEqual([0.3, 1, 1]);
  });

  it('may be known by its tier, and may stand outside', () => {
    // Computed with Python from the published table: 300 W gold at 115 V gives 195.977 W of 220 W.
    const { parts } = extended(
      '  - { part: rest, in: core, power: 60 W }\n' +
        '  - { part: brick, in: outside, wall: { reading: 220 W, tier: gold, mains: 115 V, rating: 300 W, useful: 20 W } }',
    );
    expect(parts[3]?.seat).toEqual({ kind: 'chamber', chamber: 0 });
    expect(parts[3]?.supply?.output).toBeCloseTo(195.977, 3);
    expect(parts[3]?.supply?.rating).toBe(300);
    expect(parts[3]?.power).toBeCloseTo(220 - 195.977, 3);
  });

  it('of which nothing is known has 88 %', () => {
    // Assumption, no source.
    const { parts } = extended('  - { part: supply, in: core, wall: { reading: 133 W } }');
    expect(parts[2]?.power).toBeCloseTo(0.12 * 133, 9);
  });
});

describe('walls', () => {
  it('let no heat through unless the file says so', () => {
    expect(scenario(SCENARIO).enclosure).not.toHaveProperty('skins');
  });

  it('may be given by their conductance, with the usual share and no limit', () => {
    const { skins } = extended('skin: { core: { conductance: 1.2 W/K } }');
    expect(skins).toEqual([{ chamber: 1, conductance: 1.2, share: 0.5 }]);
  });

  it('have the touch limit of their material, unless another is given', () => {
    // IEC 62368-1, table 38 (from memory): metal 60 °C for some seconds.
    const metal = extended('skin: { core: { conductance: 1.2 W/K, material: metal, share: 40 % } }').skins;
    expect(metal).toEqual([{ chamber: 1, conductance: 1.2, share: 0.4, material: 'metal', limit: 333.15 }]);
    const held = extended('skin: { core: { conductance: 1.2 W/K, material: metal, limit: 48 °C } }').skins;
    expect(held?.[0]?.limit).toBeCloseTo(321.15, 9);
  });

  it('may be taken from the box', () => {
    // Computed with Python: 34.3579 W at 15 K for 260 x 250 x 100 mm painted at sea level, half of the drop outside.
    const box = 'box: { base: 260 x 250 mm, height: 100 mm }';
    const text = changed(SCENARIO, 'airway:', `skin: { core: { ${box} } }\nairway:`);
    const { skins } = scenario(changed(text, 'altitude: 300 m', 'pressure: 1013.25 hPa')).enclosure;
    expect((skins?.[0]?.conductance ?? Number.NaN) / (0.5 * (34.3579 / 15))).toBeCloseTo(1, 3);
    const bare = extended(
      'skin: { core: { box: { base: 260 x 250 mm, height: 100 mm, emissivity: 0.09, feet: false } } }',
    ).skins;
    expect((bare?.[0]?.conductance ?? Number.NaN) * 30).toBeCloseTo(14, 0);
  });

  it('share the drop as the assumptions say', () => {
    const text = changed(SCENARIO, 'assume: { ', 'assume: { heat: { panel-share: 0.6 }, ');
    const { skins } = scenario(
      changed(text, 'airway:', 'skin: { core: { conductance: 1 W/K } }\nairway:'),
    ).enclosure;
    expect(skins?.[0]?.share).toBe(0.6);
  });
});
