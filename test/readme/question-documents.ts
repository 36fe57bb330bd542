import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import type { Meta } from '../../src/presentation/document.ts';
import { airDocument } from '../../src/presentation/questions/air-view.ts';
import { compareDocument } from '../../src/presentation/questions/compare-data.ts';
import { marginDocument } from '../../src/presentation/questions/margin-data.ts';
import { speedsDocument } from '../../src/presentation/questions/speeds-data.ts';
import { supplyDocument } from '../../src/presentation/questions/supply-view.ts';
import { sweepDocument } from '../../src/presentation/questions/sweep-data.ts';
import { readRange } from '../../src/quantities/value-range.ts';
import { airNeed, airNeedTable, USUAL_AROUND } from '../../src/questions/air-need.ts';
import { compare } from '../../src/questions/compare/compare.ts';
import { fanVariants } from '../../src/questions/compare/variants.ts';
import { controllerTable } from '../../src/questions/controller-table.ts';
import { marginMatrix } from '../../src/questions/margin/margin.ts';
import { findQuantity } from '../../src/questions/quantity.ts';
import { supplyCheck } from '../../src/questions/supply-check.ts';
import { sweep } from '../../src/questions/sweep.ts';
import { type ScenarioSource, writtenTree } from '../../src/reading/variants/scenario-source.ts';
import { solveBuild } from '../../src/search/solve-build.ts';

/** A scenario that was read, what from, and a build that holds its limits. */
export interface Example {
  readonly source: ScenarioSource;
  readonly enclosure: Enclosure;
  readonly build: readonly number[];
}

function sweepOf(base: Example): ReturnType<typeof sweep> {
  const written = writtenTree(base.source);
  const quantity = findQuantity('room', { written, enclosure: base.enclosure });
  const range = readRange('20 °C to 60 °C', 3, 'linear');
  if (typeof quantity === 'string' || typeof range === 'string') throw new Error('no such quantity');
  return sweep(base, [{ quantity, range }], { anew: false });
}

/** One document of each question, about one example. */
export function questionDocuments(base: Example, meta: Meta): readonly unknown[] {
  const { enclosure, build } = base;
  const solved = solveBuild(assemble(plantOf(enclosure), build), false);
  const place = enclosure.places.findIndex(({ kind }) => kind === 'bank');
  const bank = solved.machine.banks[0]?.bank;
  const conditions = { rooms: [300], altitudes: [1500], dust: [1], slower: [0.05], lostFans: true };
  const matrix = marginMatrix(base, conditions);
  if (!bank || typeof matrix === 'string') throw new Error('the example has no fans, or cannot be read');
  const anew = sweepOf(base);
  const variants = [
    ...fanVariants(base, place, [bank.fan], 1),
    ...fanVariants(base, place, [{ ...bank.fan, id: 'other', depth: 0.01 }], 2),
  ];
  const supply = supplyCheck({
    wall: 60,
    efficiency: { kind: 'number', efficiency: 0.9 },
    rating: 80,
    inside: true,
    useful: 0,
    fans: [{ count: 1, power: 1 }],
    peak: { factor: 1.2, duration: 0.1 },
    kind: 'none',
  });
  const need = airNeed(95, 10, USUAL_AROUND);
  const air = { need, table: airNeedTable(95, 10, USUAL_AROUND), around: USUAL_AROUND };
  return [
    compareDocument('', compare(variants, { place }), meta),
    sweepDocument('', anew, meta),
    sweepDocument('', { ...anew, points: anew.points.map((point) => ({ ...point, build })) }, meta),
    marginDocument('', matrix, meta),
    speedsDocument('', controllerTable(solved), meta),
    supplyDocument(supply, meta),
    airDocument(air, meta),
  ];
}
