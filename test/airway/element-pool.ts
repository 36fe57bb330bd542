import type { Element } from '../../src/elements/element.ts';
import { elementKinds } from '../../src/elements/kinds.ts';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { curveFromPoints, type FanCurve } from '../../src/fan/curve.ts';

/** Invented fields of every kind of element, by its key. */
const written: Readonly<Record<string, readonly Record<string, unknown>[]>> = {
  perforated: [
    { perforated: '95 x 95 mm', hole: '4 mm', web: '1.5 mm', sheet: '1.5 mm', facing: 'shroud' },
    { perforated: '160 x 80 mm', hole: '5 mm', web: '2 mm', sheet: '1 mm' },
  ],
  screen: [{ screen: '95 x 95 mm', open: '55 %', wire: '0.2 mm' }],
  filter: [
    { filter: 'foam', face: '92 x 92 mm', thickness: '5 mm', pores: '30 ppi' },
    { filter: 'fibre', face: '92 x 92 mm', pressure: '20 Pa', at: '1 m/s', loading: '50 %' },
  ],
  guard: [{ guard: '80 x 80 mm', open: '88 %' }],
  louvre: [{ louvre: '160 x 80 mm', open: '50 %' }],
  slot: [{ slot: '90 x 2 mm' }, { slot: '480 x 1 mm', discharge: 0.6 }],
  orifice: [{ orifice: '30 mm', sheet: '1 mm' }],
  duct: [
    { duct: '100 x 50 mm', length: '300 mm' },
    { duct: '90 x 2 mm', length: '40 mm', entry: 'sharp', exit: 'free' },
  ],
  bend: [{ bend: 'sharp', face: '60 x 60 mm' }],
  step: [{ step: '60 x 60 mm', to: '90 x 90 mm' }],
  passage: [{ passage: '92 x 92 mm' }],
  fins: [
    { fins: 'tower', face: '92 x 92 mm', depth: '25 mm', pitch: '2 mm', fin: '0.4 mm' },
    { fins: 'low', face: '80 x 20 mm', depth: '100 mm', count: 27, fin: '0.8 mm' },
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
  ],
  given: [
    { given: 'loss', K: 2.85, area: '60 cm²' },
    { given: 'loss', a: '400 Pa s/m³', b: '5e4 Pa s²/m⁶' },
    { given: 'loss', a: '0.5 Pa s/m³', b: '3e5 Pa s²/m⁶' },
  ],
  points: [
    { points: 'table', flow: '5 10 15 20 L/s', pressure: '1.2 3.3 7.0 11.5 Pa' },
    { points: 'table', flow: '5 10 15 20 L/s', pressure: '0.8 3.3 6.0 11.5 Pa', by: 'curve' },
  ],
  power: [{ power: 'law', exponent: 1.8, pressure: '12 Pa', flow: '20 m³/h' }],
};

/** An element of a kind from fields as a file would have them. */
export function elementFrom(key: string, fields: Record<string, unknown>): Element {
  const kind = elementKinds.find((one) => one.key === key);
  if (!kind) throw new RangeError(`no kind of element is called ${key}`);
  return kind.make(fields);
}

/** Invented elements: one or more of every kind. */
export const elementPool: readonly Element[] = elementKinds.flatMap((kind) =>
  (written[kind.key] ?? []).map((fields) => kind.make(fields)),
);

/** Invented fan curves: digitised with and without a stall dip, from box figures, weak and strong. */
export const curvePool: readonly FanCurve[] = [
  curveFromPoints({ flows: [0, 0.005, 0.01, 0.015, 0.02, 0.025], pressures: [40, 34, 27, 22, 12, 0] }),
  curveFromPoints({
    flows: [0, 0.005, 0.01, 0.015, 0.018, 0.022, 0.026, 0.03],
    pressures: [40, 33, 25, 22, 24, 21, 12, 0],
  }),
  curveFromPoints({ flows: [0, 0.004, 0.009, 0.013], pressures: [16, 13, 8, 0] }),
  curveFromBox(0.03, 60),
  curveFromBox(0.03, 15, 0),
  curveFromBox(0.012, 22, 1),
  curveFromBox(0.002, 4),
  curveFromBox(0.06, 180),
];
