import { type Arrangement, countHoles } from '../../elements/hole-pattern.ts';
import type { Hole, HoleShape } from '../../elements/hole-shape.ts';
import { perforatedElement } from '../../elements/perforated.ts';
import { type PerforatedSheet, patternOf } from '../../elements/perforated-sheet.ts';
import type { Metres } from '../../quantities/dimensions.ts';
import { holdsLimits } from './holds-limits.ts';
import { holesFor } from './hole-sizes.ts';
import { shapesOf } from './sheet-rules.ts';
import { type VentPattern, ventPattern } from './vent-pattern.ts';
import { type VentState, ventState } from './vent-state.ts';
import type { VentTask } from './vent-task.ts';

/** Webs are chosen in steps of this [m]. */
const STEP: Metres = 0.0001;
const ARRANGEMENTS: readonly Arrangement[] = ['staggered', 'square'];

/** A pattern and whether it does what is asked. */
export interface VentCandidate extends VentPattern {
  readonly reaches: boolean;
}

function sheetWith({ sheet }: VentTask, hole: Hole, pattern: Arrangement, web: Metres): PerforatedSheet {
  const { perforated, sheet: thickness, facing } = sheet;
  const slot = hole.shape === 'slot' ? { 'slot-length': hole.length } : {};
  return { perforated, hole: hole.size, web, sheet: thickness, shape: hole.shape, ...slot, pattern, facing };
}

function fits(sheet: PerforatedSheet): boolean {
  return countHoles(patternOf(sheet), sheet.perforated) > 0;
}

/** Whether a sheet does what is asked. */
function reachesAim(task: VentTask, open: VentState): (sheet: PerforatedSheet) => boolean {
  return (sheet) => {
    if (!fits(sheet)) return false;
    const element = perforatedElement(sheet);
    if (task.aim === 'limits') return holdsLimits(task, element);
    return (ventState(task, element)?.flow ?? 0) >= task.keep * open.flow;
  };
}

/** The widest webs with which holes still do what is asked; the narrowest if none do. */
function withWidestWeb(
  task: VentTask,
  reaches: (sheet: PerforatedSheet) => boolean,
  hole: Hole,
  pattern: Arrangement,
): { readonly sheet: PerforatedSheet; readonly reaches: boolean } {
  const { width, height } = task.sheet.perforated;
  const make = (steps: number): PerforatedSheet => sheetWith(task, hole, pattern, steps * STEP);
  const narrowest = Math.ceil(task.leastWeb / STEP - 1e-6);
  if (!reaches(make(narrowest))) return { sheet: make(narrowest), reaches: false };
  // Wider webs never mean more holes, so what reaches lies below one number and what does not above.
  let low = narrowest;
  let high = Math.ceil(Math.max(width, height) / STEP) + narrowest;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (reaches(make(middle))) low = middle;
    else high = middle;
  }
  return { sheet: make(low), reaches: true };
}

/** Those that do what is asked with the least work first; then those that come nearest. */
function compare(one: VentCandidate, other: VentCandidate): number {
  if (one.reaches !== other.reaches) return one.reaches ? -1 : 1;
  return one.reaches ? one.work - other.work : other.share - one.share;
}

function bestOf(
  task: VentTask,
  open: VentState,
  shape: HoleShape,
  arrangement: Arrangement,
): readonly VentCandidate[] {
  const reaches = reachesAim(task, open);
  const all = holesFor(task, shape).flatMap((hole) => {
    const found = withWidestWeb(task, reaches, hole, arrangement);
    const pattern = fits(found.sheet) ? ventPattern(task, found.sheet, open) : undefined;
    return pattern ? [{ ...pattern, reaches: found.reaches }] : [];
  });
  return all.sort(compare).slice(0, 1);
}

/**
 * For each shape that the process makes and each arrangement the best size: of those that do what is asked the one that
 * takes the least cutting, with webs as wide as they may be; if none does, the one that keeps most of the flow.
 *
 * @param task the opening
 * @param open what comes of no opening at all in the way
 * @returns the best first
 */
export function ventCandidates(task: VentTask, open: VentState): readonly VentCandidate[] {
  return shapesOf(task.process)
    .flatMap((shape) => ARRANGEMENTS.flatMap((arrangement) => bestOf(task, open, shape, arrangement)))
    .sort(compare);
}
