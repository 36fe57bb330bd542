import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { elementKinds } from '../../src/elements/kinds.ts';
import { lossOf, off, problemsOf, slopeOf } from './loss-of.ts';

/** Invented fields, every branch of every kind at least once. */
const examples: Readonly<Record<string, readonly Record<string, unknown>[]>> = {
  perforated: [
    { perforated: '95 x 95 mm', hole: '4 mm', web: '1.5 mm', sheet: '1.5 mm' },
    {
      perforated: '95 x 95 mm',
      hole: '4 mm',
      web: '1.5 mm',
      sheet: '1.5 mm',
      facing: 'shroud',
      pattern: 'square',
    },
    { perforated: '9.5 x 4 cm', hole: '5 mm', web: '2 mm', sheet: '1 mm', facing: 'duct', shape: 'hexagon' },
    {
      perforated: '95 x 40 mm',
      hole: '5 mm',
      web: '2 mm',
      sheet: '0.05 mm',
      facing: 'wall',
      shape: 'square',
    },
    {
      perforated: '95 x 40 mm',
      hole: '3 mm',
      web: '3 mm',
      sheet: '1 mm',
      shape: 'slot',
      'slot-length': '20 mm',
    },
  ],
  screen: [
    { screen: '95 x 95 mm', open: '55 %', wire: '0.2 mm' },
    { screen: '95 x 95 mm', pitch: '0.6 mm', wire: '0.2 mm' },
  ],
  filter: [
    { filter: 'foam', face: '92 x 92 mm', thickness: '5 mm', pores: '30 ppi' },
    { filter: 'fibre', face: '92 x 92 mm', pressure: '20 Pa', at: '1 m/s', loading: '50 %' },
  ],
  guard: [{ guard: '80 x 80 mm', open: '88 %' }],
  louvre: [{ louvre: '160 x 80 mm', open: '50 %' }],
  slot: [{ slot: '90 x 2 mm' }, { slot: '90 x 2 mm', depth: '3 mm' }, { slot: '480 x 1 mm', discharge: 0.6 }],
  orifice: [
    { orifice: '30 mm', sheet: '1 mm' },
    { orifice: '30 mm', discharge: 0.65 },
  ],
  duct: [
    { duct: '100 x 50 mm', length: '300 mm' },
    { duct: '90 x 2 mm', length: '40 mm', entry: 'sharp', exit: 'free' },
  ],
  bend: [
    { bend: 'sharp', face: '60 x 60 mm' },
    { bend: 'rounded', face: '60 x 60 mm', radius: '60 mm' },
  ],
  step: [
    { step: '60 x 60 mm', to: '90 x 90 mm' },
    { step: '90 x 90 mm', to: '60 x 60 mm' },
  ],
  passage: [{ passage: '92 x 92 mm' }],
  fins: [
    { fins: 'tower', face: '92 x 92 mm', depth: '25 mm', pitch: '2 mm', fin: '0.4 mm' },
    {
      fins: 'tower',
      face: '92 x 92 mm',
      depth: '25 mm',
      pitch: '2 mm',
      fin: '0.4 mm',
      pipe: '6 mm',
      cell: '25 x 20 mm',
    },
    {
      fins: 'low',
      face: '80 x 20 mm',
      depth: '100 mm',
      count: 27,
      fin: '0.8 mm',
      conductivity: '390 W/(m K)',
    },
    { fins: 'flat', face: '80 x 10 mm', depth: '100 mm' },
  ],
  sink: [
    {
      sink: 'curve',
      face: '120 x 120 mm',
      R: '0.03 K/W',
      c: '0.05 K/W',
      m: 0.9,
      at: '1 m/s',
      a: '200 Pa s/m³',
      b: '3500 Pa s²/m⁶',
    },
    { sink: 'single', face: '92 x 92 mm', R: '0.5 K/W', at: '1.5 m/s', a: '200 Pa s/m³', b: '3500 Pa s²/m⁶' },
  ],
  given: [
    { given: 'loss', K: 2.85, area: '60 cm²', vent: '80 cm²' },
    { given: 'loss', a: '400 Pa s/m³', b: '5e4 Pa s²/m⁶' },
  ],
  points: [
    { points: 'table', flow: '5 10 15 20 L/s', pressure: '1.2 3.3 7.0 11.5 Pa' },
    { points: 'table', flow: '5 10 20 L/s', pressure: '0.3 1.2 4.9 Pa', vent: '60 cm²' },
    { points: 'table', flow: '5 10 15 20 L/s', pressure: '0.8 3.3 6.0 11.5 Pa', by: 'curve' },
  ],
  power: [{ power: 'law', exponent: 1.8, pressure: '12 Pa', flow: '20 m³/h' }],
};

const cases = elementKinds.flatMap((kind) =>
  (examples[kind.key] ?? []).map((fields, index) => ({ name: `${kind.key} ${index + 1}`, kind, fields })),
);

/** Flows over the range of small enclosures and far beyond, evenly on a logarithmic scale [m³/s]. */
const flows = Array.from({ length: 1000 }, (_, index) => 1e-8 * 10 ** (index / 125));
const states = [
  { density: 1.2, viscosity: 1.81e-5 },
  { density: 0.88, viscosity: 2.1e-5 },
];

/** Largest value of a measure over all flows. */
function worst(measure: (flow: number) => number): number {
  return flows.reduce((largest, flow) => Math.max(largest, measure(flow)), Number.NEGATIVE_INFINITY);
}

describe('the list of kinds', () => {
  it('names every kind once and this suite has an example of each', () => {
    const keys = elementKinds.map((kind) => kind.key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(Object.keys(examples).sort()).toEqual([...keys].sort());
  });

  it.each(elementKinds)('$key says what it is and where its law comes from', (kind) => {
    expect(kind.summary.length).toBeGreaterThan(10);
    expect(kind.source.length).toBeGreaterThan(5);
  });

  it.each(elementKinds)('$key has a form that a schema can describe, led by its own key', (kind) => {
    const schema = JSON.stringify(z.toJSONSchema(kind.form, { io: 'input' }));
    expect(schema).toContain(`"${kind.key}"`);
    expect(schema).toContain('"additionalProperties":false');
  });
});

describe.each(cases)('$name', ({ kind, fields }) => {
  const element = kind.make(fields);

  it.each(states)('is odd in the flow at $density kg/m³', (state) => {
    expect(Math.abs(lossOf(element, 0, state))).toBe(0);
    expect(worst((flow) => Math.abs(lossOf(element, -flow, state) + lossOf(element, flow, state)))).toBe(0);
    expect(worst((flow) => Math.abs(slopeOf(element, -flow, state) - slopeOf(element, flow, state)))).toBe(0);
  });

  it.each(states)('loses more the more air passes at $density kg/m³', (state) => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(part, part, (where, apart) => {
        const low = 10 ** (-8 * where);
        const high = low * (1 + 1e-6 + apart);
        expect(lossOf(element, high, state)).toBeGreaterThan(lossOf(element, low, state));
        expect(lossOf(element, low, state)).toBeGreaterThan(0);
      }),
      { seed: 20, numRuns: 150 },
    );
  });

  it.each(states)('has the slope of its loss, above 0 even without flow, at $density kg/m³', (state) => {
    const distance = (flow: number) => {
      const step = 1e-5 * flow;
      const secant = (lossOf(element, flow + step, state) - lossOf(element, flow - step, state)) / (2 * step);
      return off(slopeOf(element, flow, state), secant);
    };
    expect(worst(distance)).toBeLessThan(1e-5);
    expect(slopeOf(element, 0, state)).toBeGreaterThan(0);
    expect(off(slopeOf(element, 1e-13, state), slopeOf(element, 0, state))).toBeLessThan(1e-5);
  });

  it.each(states)('has no jump in loss or slope at $density kg/m³', (state) => {
    // Steps of 0.2 % without gaps; 0.2 % more flow may raise the slope by five times that much, a kink by far more.
    const fine = flows.flatMap((flow) => Array.from({ length: 10 }, (_, part) => flow * 1.002 ** part));
    const step = (measure: (flow: number) => number) =>
      fine.reduce((largest, flow) => Math.max(largest, off(measure(1.002 * flow), measure(flow))), 0);
    const rise = (flow: number) => slopeOf(element, flow, state);
    const gain = (flow: number) => lossOf(element, flow, state);
    expect(step(rise)).toBeLessThan(0.01);
    expect(step(gain)).toBeLessThan(0.01);
  });

  it('has coefficients and areas that can be', () => {
    for (const coefficient of [element.viscous, element.inertial, element.faint]) {
      expect(coefficient).toBeGreaterThanOrEqual(0);
      expect(coefficient).toBeLessThan(Number.POSITIVE_INFINITY);
    }
    if (element.ventFace !== undefined) expect(element.ventFace).toBeGreaterThan(0);
    if (element.freeArea !== undefined) expect(element.freeArea).toBeGreaterThan(0);
    expect(element.lossUncertainty).toBeGreaterThanOrEqual(0);
    expect(element.lossUncertainty).toBeLessThanOrEqual(0.5);
  });

  it('refuses a field it does not know', () => {
    expect(problemsOf(kind, fields)).toEqual([]);
    expect(problemsOf(kind, { ...fields, colour: 'red' }).join()).toContain('colour');
  });

  it('refuses each field without its unit or with nonsense, without breaking down', () => {
    for (const field of Object.keys(fields)) {
      expect(problemsOf(kind, { ...fields, [field]: '-' })).not.toEqual([]);
      expect(problemsOf(kind, { ...fields, [field]: { a: 1 } })).not.toEqual([]);
    }
  });
});
