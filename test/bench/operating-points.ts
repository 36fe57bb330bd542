import { seriesLeg } from '../../src/airway/series.ts';
import { createSinglePath } from '../../src/airway/single-path.ts';
import { elementKinds } from '../../src/elements/kinds.ts';
import { curveFromPoints } from '../../src/fan/curve.ts';
import { median } from './median.ts';

const POINTS = 200_000;
const ROUNDS = 9;
/** Speeds tried in turn: a step that has no common measure with the range, so that none comes twice. */
const SPEED_STEP = 0.618_033_988_75;
const SLOWEST = 0.25;

/** Invented path: sheet with holes, dust screen, 92 mm fan, tower of fins. */
function samplePath() {
  const element = (key: string, fields: Record<string, unknown>) => {
    const kind = elementKinds.find((one) => one.key === key);
    if (!kind) throw new RangeError(`no kind of element is called ${key}`);
    return { kind: 'element' as const, element: kind.make(fields) };
  };
  const curve = curveFromPoints({
    flows: [0, 0.0035, 0.0065, 0.009, 0.012, 0.015, 0.018],
    pressures: [34, 28, 22.5, 21, 18, 9.5, 0],
  });
  return seriesLeg([
    element('perforated', { perforated: '95 x 95 mm', hole: '4 mm', web: '1.5 mm', sheet: '1.5 mm' }),
    element('screen', { screen: '95 x 95 mm', open: '55 %', wire: '0.2 mm' }),
    { kind: 'bank', curve, count: 1, derating: 1 },
    element('fins', { fins: 'tower', face: '92 x 92 mm', depth: '25 mm', pitch: '2 mm', fin: '0.4 mm' }),
  ]);
}

/** Whether a search begins where the last one ended or always at the same flow. */
type Start = 'last flow' | 'fixed flow';

const FIXED_START = 0.005;

/** Operating points per second in the median round, each at another speed. */
function pointsPerSecond(start: Start): number {
  const leg = samplePath();
  const find = createSinglePath(leg);
  const fan = 2;
  let share = 0;
  let flow = FIXED_START;
  let total = 0;
  const round = (): number => {
    const began = process.hrtime.bigint();
    for (let point = 0; point < POINTS; point++) {
      share = (share + SPEED_STEP) % 1;
      leg.ratios[fan] = SLOWEST + (1 - SLOWEST) * share;
      leg.refresh();
      flow = find(start === 'last flow' ? flow : FIXED_START);
      total += flow;
    }
    return POINTS / (Number(process.hrtime.bigint() - began) * 1e-9);
  };
  round();
  const rates = Array.from({ length: ROUNDS }, round);
  if (!(total > 0)) throw new Error('no flow was found');
  return median(rates);
}

/** Measures and prints how many operating points of a single path are found per second. */
export function benchOperatingPoints(): void {
  for (const start of ['last flow', 'fixed flow'] as const) {
    const rate = Math.round(pointsPerSecond(start) / 1000);
    console.log(`operating points, from the ${start}: ${rate} thousand per second`);
  }
}
