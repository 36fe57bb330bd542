import { dutyOutcome } from '../../src/enclosure/duty-outcome.ts';
import type { Enclosure, Part } from '../../src/enclosure/enclosure.ts';
import { assemble, type Machine, plantOf } from '../../src/enclosure/machine.ts';
import type { DutyOutcome } from '../../src/enclosure/outcome.ts';
import { type Drawing, dutyOf, enclosureOf } from './hand-made.ts';

/** What a drawing does not know: pipes, bases, leakage and the like of each part, in order; walls of chambers. */
export interface Dress {
  readonly parts?: readonly Partial<Part>[];
  readonly skins?: Enclosure['skins'];
}

/** The first build of a drawing, dressed. */
export function dressed(drawing: Drawing, { parts: extras = [], skins }: Dress): Machine {
  const enclosure = enclosureOf(drawing);
  const parts = enclosure.parts.map((part, index): Part => ({ ...part, ...extras[index] }));
  const all = { ...enclosure, parts, ...(skins ? { skins } : {}) };
  return assemble(
    plantOf(all),
    enclosure.places.map(() => 0),
  );
}

/** The outcome of a machine in its one duty, all banks at one speed. */
export function outcomeOf(machine: Machine, speed = 1): DutyOutcome {
  const outcome = dutyOutcome(
    machine,
    dutyOf(machine),
    Float64Array.from(machine.banks, () => speed),
  );
  if (typeof outcome === 'string') throw new Error(outcome);
  return outcome;
}

/** One part of an outcome. */
export function partOf(outcome: DutyOutcome, index: number) {
  const part = outcome.parts[index];
  if (!part) throw new RangeError(`no part ${index}`);
  return part;
}

/** Amounts of a part's rise by their labels [K]. */
export function riseOf(outcome: DutyOutcome, index: number): ReadonlyMap<string, number> {
  return new Map(partOf(outcome, index).rise.map(({ label, amount }) => [label, amount]));
}

/** Sum of the amounts of a budget. */
export function sumOf(lines: readonly { readonly amount: number }[]): number {
  return lines.reduce((sum, { amount }) => sum + amount, 0);
}
