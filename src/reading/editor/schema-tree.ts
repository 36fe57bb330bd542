import { isMap } from '../findings.ts';

/** A JSON Schema, or a part of one. */
export type SchemaPart = { [key: string]: unknown };

/**
 * True of a part of a schema.
 *
 * @param value any
 */
export function isPart(value: unknown): value is SchemaPart {
  return isMap(value);
}

/**
 * Branches of a part: those of a union, or the part itself.
 *
 * @param part of a schema
 */
export function branchesIn(part: SchemaPart): readonly SchemaPart[] {
  const branches = [part['anyOf'], part['oneOf']].flatMap((list) => (Array.isArray(list) ? list : []));
  return branches.length === 0 ? [part] : branches.filter(isPart).flatMap(branchesIn);
}

/**
 * Keys of a map with their parts.
 *
 * @param part of a schema
 */
export function propertiesOf(part: SchemaPart): readonly (readonly [string, SchemaPart])[] {
  const properties = part['properties'];
  if (!isPart(properties)) return [];
  return Object.entries(properties).flatMap(([key, value]) => (isPart(value) ? [[key, value] as const] : []));
}

/** Parts below one that stand at the same path: items of a list, values of a map with names of the user's choice. */
function within(part: SchemaPart): readonly SchemaPart[] {
  return [part['items'], part['additionalProperties']].filter(isPart);
}

/**
 * Visits every key of a schema, branch by branch.
 *
 * @param part to begin with
 * @param path of it, keys with dots between
 * @param visit is given the part of a key, its path and the branch it stands in
 */
export function eachKey(
  part: SchemaPart,
  path: string,
  visit: (key: SchemaPart, path: string, branch: SchemaPart) => void,
): void {
  for (const branch of branchesIn(part)) {
    for (const [key, value] of propertiesOf(branch)) {
      const at = path === '' ? key : `${path}.${key}`;
      visit(value, at, branch);
      eachKey(value, at, visit);
    }
    for (const inner of within(branch)) eachKey(inner, path, visit);
  }
}
