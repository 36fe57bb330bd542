import { type Leg, OUTSIDE } from '../enclosure/enclosure.ts';
import { check, type Findings } from './findings.ts';
import { names } from './name.ts';
import { duplicate } from './name-findings.ts';

const chambersForm = names.min(1);
const PATH = ['airway', 'chambers'];

/**
 * Reads `airway.chambers`.
 *
 * @param value as written; nothing is reported if it is absent
 * @param findings receives what is wrong
 * @returns names; index 0 is outside
 */
export function readChambers(value: unknown, findings: Findings): readonly string[] {
  const chambers = ['outside'];
  if (value === undefined) return chambers;
  for (const [index, chamber] of (check(chambersForm, value, PATH, findings) ?? []).entries()) {
    if (chamber === chambers[OUTSIDE]) {
      const message = '"outside" is always there and is not listed';
      findings.push({ code: 'conflict', path: [...PATH, index], at: 'value', message });
    } else if (chambers.includes(chamber)) {
      findings.push(duplicate('chamber', chamber, [...PATH, index]));
    } else {
      chambers.push(chamber);
    }
  }
  return chambers;
}

/**
 * Reports chambers no leg touches and those without a way to the room.
 *
 * @param chambers names as listed in the file, after outside
 * @param legs all of the airway
 * @param findings receives what is wrong
 */
export function checkChambers(chambers: readonly string[], legs: readonly Leg[], findings: Findings): void {
  const reached = reachable(legs);
  for (const [chamber, id] of chambers.entries()) {
    if (reached.has(chamber)) continue;
    const touched = legs.some((leg) => leg.from === chamber || leg.to === chamber);
    const message = touched ? `no legs lead from "${id}" to outside` : `no leg leads to or from "${id}"`;
    const path = [...PATH, chamber - 1];
    findings.push({ code: touched ? 'unreachable' : 'unused', path, at: 'value', message });
  }
}

/** Chambers that are joined to the room, air flowing either way. */
function reachable(legs: readonly Leg[]): ReadonlySet<number> {
  const reached = new Set([OUTSIDE]);
  let before = 0;
  while (reached.size > before) {
    before = reached.size;
    for (const { from, to } of legs) {
      if (reached.has(from)) reached.add(to);
      if (reached.has(to)) reached.add(from);
    }
  }
  return reached;
}
