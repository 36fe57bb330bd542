import type { z } from 'zod';
import type { Bank, BankPlace } from '../enclosure/enclosure.ts';
import type { FanModel } from '../fan/fan-model.ts';
import { type BankChoice, bankChoiceForm, bankForm } from './bank-fields.ts';
import { check, type Findings, type WrittenMap } from './findings.ts';
import { hearingOf } from './hearing.ts';
import { duplicate, unknownName } from './name-findings.ts';
import type { Path } from './problem.ts';

/** Most a fan's frame may differ from the face of its place [m]. Makers round the same frame differently. */
const FRAME_TOLERANCE = 0.001;
/** Slack for rounding [m]. */
const ROUNDING = 1e-9;

type BankFields = z.output<typeof bankForm>;

interface Slot {
  readonly id: string;
  readonly fields: BankFields;
  readonly path: Path;
  readonly choicePath: Path;
}

/**
 * Reads a place for fans and what may stand there.
 *
 * @param id name of the place
 * @param fields its entry under `elements`, as written
 * @param choice its entry under `choices`, as written; undefined if it has none
 * @param fans of the catalog
 * @param findings receives what is wrong
 */
export function readBankPlace(
  id: string,
  fields: WrittenMap,
  choice: unknown,
  fans: readonly FanModel[],
  findings: Findings,
): BankPlace | undefined {
  const given = check(bankForm, fields, ['elements', id], findings);
  const choicePath = ['choices', id];
  const chosen = check(bankChoiceForm, choice ?? {}, choicePath, findings);
  if (!given || !chosen) return undefined;
  const before = findings.length;
  const slot = { id, fields: given, path: ['elements', id], choicePath };
  const heard = hearingOf(given);
  const fitting =
    chosen.fans === 'catalog'
      ? fromCatalog(slot, fans, findings)
      : fromList(slot, chosen.fans, fans, findings);
  if (findings.length > before) return undefined;
  return {
    kind: 'bank',
    id,
    options: optionsOf(fitting, chosen),
    depth: given.depth,
    inletGap: given['inlet-gap'],
    outletGap: given['outlet-gap'],
    ...(given['inlet-wall'] === undefined ? {} : { inletWall: given['inlet-wall'] }),
    ...(given['outlet-wall'] === undefined ? {} : { outletWall: given['outlet-wall'] }),
    ...(given['inlet-bar'] === undefined ? {} : { inletBar: given['inlet-bar'] }),
    ...(given['outlet-bar'] === undefined ? {} : { outletBar: given['outlet-bar'] }),
    ...(given.avoid ? { avoid: given.avoid } : {}),
    ...(heard ? { heard } : {}),
  };
}

/** Empty first, then by fan and count, so that the order does not depend on how the catalog is stored. */
function optionsOf(fans: readonly FanModel[], chosen: BankChoice): (Bank | null)[] {
  const counts = [...new Set(chosen.count)].sort((one, other) => one - other);
  const sorted = [...fans].sort((one, other) => (one.id < other.id ? -1 : 1));
  const banks = sorted.flatMap((fan) => counts.map((count) => ({ fan, count })));
  return chosen.empty ? [null, ...banks] : banks;
}

function fromCatalog(slot: Slot, fans: readonly FanModel[], findings: Findings): readonly FanModel[] {
  const sized = fans.filter((fan) => fitsFace(fan, slot.fields));
  const fitting = sized.filter((fan) => fitsDepth(fan, slot.fields));
  if (fitting.length > 0) return fitting;
  const [key, known] =
    sized.length > 0
      ? (['depth', sized.map((fan) => fan.depth)] as const)
      : (['face', fans.map((fan) => fan.size)] as const);
  const what = key === 'face' ? 'of this size' : 'of this size that is thin enough';
  findings.push({
    code: 'no-fit',
    path: [...slot.path, key],
    at: 'value',
    message: `the catalog has no fan ${what}`,
    found: millimetres([key === 'face' ? slot.fields.face.width : slot.fields.depth]),
    expected: known.length > 0 ? `room for one of these: ${millimetres(known)}` : 'a catalog with fans in it',
  });
  return [];
}

function fromList(
  slot: Slot,
  ids: readonly string[],
  fans: readonly FanModel[],
  findings: Findings,
): readonly FanModel[] {
  const found: FanModel[] = [];
  for (const [index, id] of ids.entries()) {
    const path = [...slot.choicePath, 'fans', index];
    const fan = fans.find((one) => one.id === id);
    if (!fan) {
      const known = fans.filter((one) => fitsFace(one, slot.fields)).map((one) => one.id);
      findings.push(unknownName('fan', id, known, path));
    } else if (found.includes(fan)) {
      findings.push(duplicate('fan', id, path));
    } else if (!fitsFace(fan, slot.fields) || !fitsDepth(fan, slot.fields)) {
      const { face, depth } = slot.fields;
      const expected = `size ${millimetres([face.width])} and depth ${millimetres([depth])} at most`;
      const has = `size ${millimetres([fan.size])} and depth ${millimetres([fan.depth])}`;
      const message = `the fan "${id}" does not fit "${slot.id}"`;
      findings.push({ code: 'no-fit', path, at: 'value', message, found: has, expected });
    } else {
      found.push(fan);
    }
  }
  return found;
}

function fitsFace(fan: FanModel, fields: BankFields): boolean {
  return Math.abs(fan.size - fields.face.width) <= FRAME_TOLERANCE + ROUNDING;
}

function fitsDepth(fan: FanModel, fields: BankFields): boolean {
  return fan.depth <= fields.depth + ROUNDING;
}

function millimetres(lengths: readonly number[]): string {
  const rounded = lengths.map((length) => Number((length * 1000).toFixed(1)));
  return `${[...new Set(rounded)].sort((one, other) => one - other).join(', ')} mm`;
}
