import type { CurvePoints } from '../fan/fan-model.ts';
import type { Finding, Path } from './problem.ts';

/** Fewest points of a curve [-]; two are a straight line, which no fan has. */
const FEWEST = 3;
/** Last pressure over the first up to which a curve may be drawn out to zero pressure [-]. Assumption, no source. */
const MOST_LEFT = 0.3;
/** Share of the last flow within which the highest pressure lies [-]. Assumption: a stall dip is near shut-off. */
const PEAK_WITHIN = 1 / 3;

/**
 * Refuses points that cannot be a fan's curve at full speed. A local rise, the dip of a stalling fan, is allowed.
 *
 * @param points flows and pressures as given, none negative
 * @param path of the curve in the file
 * @returns the first thing that is wrong, or undefined
 */
export function curveFinding(points: CurvePoints, path: Path): Finding | undefined {
  const { flows, pressures } = points;
  const at = 'value';
  if (flows.length !== pressures.length) {
    const message = 'a curve has as many pressures as flows';
    const found = `${flows.length} flows and ${pressures.length} pressures`;
    return { code: 'fan-curve', path: [...path, 'pressure'], at, message, found };
  }
  const fault = flowFault(flows);
  if (fault) return { code: 'fan-curve', path: [...path, 'flow'], at, ...fault };
  const rise = pressureFault(points);
  return rise && { code: 'fan-curve', path: [...path, 'pressure'], at, ...rise };
}

type Fault = Pick<Finding, 'message' | 'found' | 'expected' | 'suggestion'>;

function flowFault(flows: readonly number[]): Fault | undefined {
  if (flows.length < FEWEST) {
    const expected = `${FEWEST} points or more; with free delivery and shut-off only, use "box"`;
    return { message: 'too few points for a curve', found: `${flows.length}`, expected };
  }
  if (flows[0] !== 0) {
    return {
      message: 'a curve begins at shut-off',
      found: 'a first flow above 0',
      expected: 'a first flow of 0',
    };
  }
  const unsorted = flows.findIndex((flow, index) => flow <= (flows[index - 1] ?? -1));
  if (unsorted < 0) return undefined;
  const found = `flow number ${unsorted + 1} is not above the one before it`;
  return { message: 'the points are not in order', found, expected: 'flows that rise from point to point' };
}

function pressureFault({ flows, pressures }: CurvePoints): Fault | undefined {
  const first = pressures[0] ?? 0;
  const last = pressures.at(-1) ?? 0;
  const delivery = flows.at(-1) ?? 0;
  if (!(first > 0))
    return { message: 'a fan makes pressure at shut-off', found: '0', expected: 'more than 0' };
  const highest = pressures.indexOf(Math.max(...pressures));
  if (last > first || (flows[highest] ?? 0) > PEAK_WITHIN * delivery) {
    const expected = 'the highest pressure at or near zero flow; a short rise after a stall dip is fine';
    return { message: 'the curve rises with the flow as a whole', expected };
  }
  if (last > MOST_LEFT * first) {
    return {
      message: 'the curve ends long before free delivery',
      found: `${Math.round((100 * last) / first)} % of the first pressure at the last point`,
      expected: `points down to 0 Pa, or at least below ${100 * MOST_LEFT} % of the first pressure`,
      suggestion: 'a last point with the free delivery and 0 Pa',
    };
  }
  return undefined;
}
