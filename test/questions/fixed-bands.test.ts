import { describe, expect, it } from 'vitest';
import type { Band } from '../../src/bands/band.ts';
import { outcomeBands } from '../../src/bands/outcome-bands.ts';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { withLostFans } from '../../src/enclosure/lost-fans.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { plain } from '../../src/presentation/paint.ts';
import { marginDocument } from '../../src/presentation/questions/margin-data.ts';
import { marginView } from '../../src/presentation/questions/margin-view.ts';
import { speedsDocument } from '../../src/presentation/questions/speeds-data.ts';
import { speedsView } from '../../src/presentation/questions/speeds-view.ts';
import { controllerTable } from '../../src/questions/controller-table.ts';
import { type MarginMatrix, marginMatrix } from '../../src/questions/margin/margin.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { isFailed, outcomeAt } from '../../src/search/build-outcome.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { solveBuild } from '../../src/search/solve-build.ts';
import { newDraw, statedAt, type Truth, truthOf } from '../bands/truth.ts';
import { changed, FANS, readBoth, TWO_FANS } from '../scenarios/two-fans.ts';
import { seeded } from '../search/random.ts';

const meta = { version: '0', command: 'any', warnings: [] };
const fans = readCatalogs([{ file: 'fans.yaml', text: FANS }]);

/** The two fans with something to cool, in two duties. Invented. */
const WARM = changed(TWO_FANS, {
  'power: 0.001 W, on: stack, limit: 60 °C': 'power: 95 W, on: stack, limit: 50 °C',
  'builds: { as-drawn: {} }': `duties:
  - { duty: work, share: 40 %, heat: 90 % }
  - { duty: hot, share: 60 %, heat: 100 %, room: 30 °C }`,
});

/** The same where limits are about as likely broken as not. */
const TIGHT = changed(WARM, { 'limit: 50 °C': 'limit: 40 °C' });

/** The same with nothing that may be off but noise. */
const KNOWN = `${TIGHT}uncertainty:
  { room: 0 K, heat: 0 %, fixed: 0 %, fins: 0 %, loss: 0 %, curve: 0 %, slow-fan: 0 %, fan-power: 0 % }
`;

/** A band in a document, which rounds. */
const near = ({ low, expected, high }: Band) => ({
  low: expect.closeTo(low, 3),
  expected: expect.closeTo(expected, 3),
  high: expect.closeTo(high, 3),
});

const first = (enclosure: Enclosure) => enclosure.places.map(() => 0);

function solvedIn(scenario: string) {
  const plant = plantOf(readBoth(scenario, FANS));
  return solveBuild(assemble(plant, first(plant.enclosure)), fasterIsCooler(plant));
}

function matrixOf(scenario: string, speed: number): MarginMatrix {
  const enclosure = readBoth(scenario, FANS);
  const source = { file: 'box.yaml', text: scenario, fans: fans.ok ? fans.fans : [] };
  const found = marginMatrix(
    { source, enclosure, build: first(enclosure) },
    { rooms: [298.15, 303.15], altitudes: [], dust: [], slower: [0.05], lostFans: true, speed, duty: 'hot' },
  );
  if (typeof found === 'string') throw new Error(found);
  return found;
}

describe('bands of the fixed speeds of duties', () => {
  const solved = solvedIn(WARM);
  const table = controllerTable(solved);

  it('are those that a solved build has at the same speeds', () => {
    // Another route: the whole outcome with both duties at once.
    const { machine, duties } = solved;
    const outcome = outcomeAt(
      machine,
      duties.map(({ point }) => point.ratios),
      0,
    );
    if (isFailed(outcome)) throw new Error(outcome.reason);
    const bands = outcomeBands(machine.plant.enclosure, outcome);
    table.duties.forEach(({ bands: own }, index) => {
      const other = bands?.duties[index];
      expect(own?.level.low).toBeCloseTo(other?.level.low ?? Number.NaN, 6);
      expect(own?.level.high).toBeCloseTo(other?.level.high ?? Number.NaN, 6);
      expect(own?.holding).toBeCloseTo(other?.holding ?? Number.NaN, 2);
    });
  });

  it('stand in the text and in the document', () => {
    const view = speedsView('', table, { paint: plain, width: 80 });
    expect(view).toMatch(/^hot +\d+ to \d+ dB\(A\) +\d+ %$/m);
    const sure = table.duties[1]?.bands;
    const { low = 0, expected = 0, high = 0 } = sure?.level ?? {};
    expect(speedsDocument('', table, meta).result).toMatchObject({
      duties: [{}, { sure: { level_dBA: near({ low, expected, high }), holding: sure?.holding } }],
    });
  });
});

describe('how sure margins are under some conditions', () => {
  const speed = 0.6;

  it('is what comes of changed data, solved anew', () => {
    const enclosure = readBoth(TIGHT, FANS);
    const [cell] = matrixOf(TIGHT, speed).cells.filter(
      ({ dead, slower, room }) => dead === 'pair' && slower > 0 && room < 300,
    );
    const place = enclosure.places.findIndex(({ id }) => id === 'pair');
    const lost = withLostFans(enclosure, first(enclosure), [{ place, dead: 1, missing: 0 }]);
    const duty = enclosure.duties.find(({ id }) => id === 'hot');
    if (!cell?.sure || !duty) throw new Error('no such cell');
    const ratios = Float64Array.of(speed * 0.95);
    const stated = statedAt(lost, first(enclosure), { ...duty, room: cell.room }, ratios);
    if (!stated) throw new Error('no solution as stated');
    const random = seeded(811);
    const truths: Truth[] = [];
    for (let count = 0; count < 400; count++) {
      const truth = truthOf(stated, newDraw(random));
      if (truth) truths.push(truth);
    }
    const share = (holds: (margin: number) => boolean): number =>
      truths.filter(({ margins }) => margins.every(holds)).length / truths.length;
    const { low, high } = cell.sure.margin;
    // 400 draws tell a share to within 2.5 % (one standard deviation); three of them.
    expect(cell.sure.holding).toBeGreaterThan(0.05);
    expect(cell.sure.holding).toBeLessThan(0.95);
    expect(Math.abs(share((margin) => margin >= 0) - cell.sure.holding)).toBeLessThan(0.075);
    expect(Math.abs(share((margin) => margin >= low && margin <= high) - 0.9)).toBeLessThan(0.045);
  });

  it('is certain where nothing may be off', () => {
    for (const { margin, sure } of matrixOf(KNOWN, speed).cells) {
      expect(sure?.margin.low).toBeCloseTo(margin, 4);
      expect(sure?.margin.high).toBeCloseTo(margin, 4);
      expect(sure?.holding).toBe(margin >= 0 ? 1 : 0);
    }
  });

  it('can be told where the only fan of a place is dead', () => {
    const two = changed(WARM, {
      'through: [vent]': 'through: [vent, alone]',
      'elements:\n': 'elements:\n  alone: { bank: fans, face: 92 mm, depth: 25 mm }\n',
      'choices:\n': 'choices:\n  alone: { fans: [e92], count: 1 }\n',
    });
    const matrix = matrixOf(two, 0.9);
    const cells = matrix.cells.filter(({ dead }) => dead === 'alone');
    expect(cells.length).toBe(4);
    for (const { sure, margin } of cells) {
      expect(sure?.margin.low).toBeLessThan(margin);
      expect(sure?.margin.high).toBeGreaterThan(margin);
    }
  });

  it('is told beyond the asked margin', () => {
    const matrix = matrixOf(TIGHT, speed);
    const asked = matrixOf(changed(TIGHT, { 'listener:': 'margin: 2 K\nlistener:' }), speed);
    expect(asked.cells.map(({ sure }) => sure?.margin.low)).toEqual(
      matrix.cells.map(({ sure }) => expect.closeTo((sure?.margin.low ?? Number.NaN) - 2, 6)),
    );
    expect(asked.cells.map(({ sure }) => sure?.holding)).toEqual(
      matrix.cells.map(({ sure }) => sure?.holding),
    );
  });

  it('stands in the text and in the document', () => {
    const matrix = matrixOf(TIGHT, speed);
    const view = marginView('', matrix, { paint: plain, width: 80 });
    expect(view).toContain('How likely all limits hold at these speeds, %');
    expect(view.replace(/\s+/g, ' ')).toMatch(
      /There, nine times in ten a margin of -?[\d.]+ to -?[\d.]+ K, limits hold: /,
    );
    const { cells } = marginDocument('', matrix, meta).result as unknown as {
      readonly cells: readonly object[];
    };
    matrix.cells.forEach(({ sure }, index) => {
      expect(cells[index]).toMatchObject({
        sure: { margin_K: sure && near(sure.margin), holding: sure?.holding },
      });
    });
  });
});
