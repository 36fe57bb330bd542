import { fingerDistance } from '../../elements/finger-distance.ts';
import { countHoles, pitches } from '../../elements/hole-pattern.ts';
import { holeFigures } from '../../elements/hole-shape.ts';
import { perforatedElement } from '../../elements/perforated.ts';
import { type PerforatedSheet, patternOf } from '../../elements/perforated-sheet.ts';
import type { Fraction, Metres, MetresPerSecond, SquareMetres } from '../../quantities/dimensions.ts';
import { cutsOf } from './sheet-rules.ts';
import { type VentState, ventState } from './vent-state.ts';
import type { VentTask } from './vent-task.ts';

/** Something to think of before a pattern is cut. */
export type VentWarning =
  | 'hole below sheet'
  | 'web below sheet'
  | 'web below least'
  | 'finger reach'
  | 'whistling';

/** A pattern of holes and what comes of it. */
export interface VentPattern extends VentState {
  readonly sheet: PerforatedSheet;
  readonly count: number;
  /** All holes together [m²]. */
  readonly area: SquareMetres;
  /** Of the field [-]. */
  readonly openShare: Fraction;
  /** From hole to hole in a row, and from row to row [m]. */
  readonly pitch: Metres;
  readonly rowPitch: Metres;
  /** Flow over that of an opening without any loss [-]. */
  readonly share: Fraction;
  /** On the gross face, and in the holes [m/s]. */
  readonly faceVelocity: MetresPerSecond;
  readonly holeVelocity: MetresPerSecond;
  /** Least distance from the holes to blades that fingers must not reach [m]; absent if a hand passes. */
  readonly fingers?: Metres;
  /** What cutting it takes: length of all edges [m] where they are cut, else the number of holes. */
  readonly work: number;
  readonly warnings: readonly VentWarning[];
}

/** Slack for sizes that meet a rule but for rounding [m]. */
const ROUNDING: Metres = 1e-9;

/** What a pattern warns of before any air moves. */
function shapeWarnings(task: VentTask, sheet: PerforatedSheet, fingers: Metres | undefined): VentWarning[] {
  const checks: readonly (readonly [VentWarning, boolean])[] = [
    ['hole below sheet', sheet.hole < sheet.sheet - ROUNDING],
    ['web below sheet', sheet.web < sheet.sheet - ROUNDING],
    ['web below least', sheet.web < task.leastWeb - ROUNDING && sheet.web >= sheet.sheet - ROUNDING],
    ['finger reach', fingers === undefined || fingers > task.blades + ROUNDING],
  ];
  return checks.filter(([, holds]) => holds).map(([warning]) => warning);
}

/**
 * A pattern in the opening's place, the fans at the speeds of the task.
 *
 * @param task the opening
 * @param sheet with its holes; at least one fits
 * @param open what comes of no opening at all in the way
 * @returns undefined if air and heat have no solution
 */
export function ventPattern(
  task: VentTask,
  sheet: PerforatedSheet,
  open: VentState,
): VentPattern | undefined {
  const state = ventState(task, perforatedElement(sheet));
  if (!state) return undefined;
  const pattern = patternOf(sheet);
  const figures = holeFigures(pattern.hole);
  const { width, height } = sheet.perforated;
  const count = countHoles(pattern, sheet.perforated);
  const area = count * figures.area;
  const repeat = pitches(pattern);
  const fingers = fingerDistance(pattern.hole);
  const holeVelocity = state.flow / area;
  const { whistleVelocity } = task.enclosure.assumptions.sound.opening;
  return {
    ...state,
    sheet,
    count,
    area,
    openShare: area / (width * height),
    pitch: repeat.hole,
    rowPitch: repeat.row,
    share: state.flow / open.flow,
    faceVelocity: state.flow / (width * height),
    holeVelocity,
    ...(fingers === undefined ? {} : { fingers }),
    work: cutsOf(task.process) === 'edge' ? (count * 4 * figures.area) / figures.hydraulicDiameter : count,
    warnings: [
      ...shapeWarnings(task, sheet, fingers),
      ...(holeVelocity > whistleVelocity ? (['whistling'] as const) : []),
    ],
  };
}
