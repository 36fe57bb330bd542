import { z } from 'zod';
import type { Path } from './problem.ts';

type Form = z.core.$ZodType;

/**
 * The form that stands at a path inside a form.
 *
 * @param form to walk into
 * @param path keys and indices
 * @param value as written, which tells between the forms of a tagged union
 * @returns undefined where the path leaves the form
 */
export function formAt(form: Form | undefined, path: Path, value: unknown): Form | undefined {
  let current = form && chosen(form, value);
  let inner = value;
  for (const step of path) {
    inner = valueAt(inner, [step]);
    const next = current && childForm(current, step);
    current = next && chosen(next, inner);
  }
  return current;
}

/**
 * Keys a map of this form may have.
 *
 * @param form of a map; of a union of maps the keys of all of them
 * @returns none if the form is no map with fixed keys
 */
export function keysOf(form: Form | undefined): readonly string[] {
  const inner = form && unwrapped(form);
  if (inner instanceof z.core.$ZodObject) return Object.keys(inner._zod.def.shape);
  return [...new Set(branchesOf(inner).flatMap(keysOf))];
}

/**
 * Branches of a union.
 *
 * @param form of any kind
 * @returns none if it is no union
 */
export function branchesOf(form: Form | undefined): readonly Form[] {
  const inner = form && unwrapped(form);
  return inner instanceof z.core.$ZodUnion ? inner._zod.def.options : [];
}

/**
 * Words that a key may have in some branch of a union.
 *
 * @param form a union of maps
 * @param key that tells the branches apart
 */
export function tagsOf(form: Form | undefined, key: string): readonly string[] {
  return branchesOf(form).flatMap((branch) => [...tagValues(branch, key)].map(String));
}

/**
 * The written value at a path; undefined if there is none.
 *
 * @param value to look into
 * @param path keys and indices
 */
export function valueAt(value: unknown, path: Path): unknown {
  let current = value;
  for (const step of path) {
    if (typeof current !== 'object' || current === null || !Object.hasOwn(current, step)) return undefined;
    current = Reflect.get(current, step);
  }
  return current;
}

/** The form that sees the written value: without defaults, and before what is computed from it. */
function unwrapped(form: Form): Form {
  let inner = form;
  for (;;) {
    const def = inner._zod.def;
    if (inner instanceof z.core.$ZodPipe) inner = inner._zod.def.in;
    else if ('innerType' in def && def.innerType instanceof z.core.$ZodType) inner = def.innerType;
    else return inner;
  }
}

/** Of a tagged union, the branch the written value belongs to. */
function chosen(form: Form, value: unknown): Form {
  const inner = unwrapped(form);
  if (!(inner instanceof z.core.$ZodDiscriminatedUnion)) return inner;
  const { discriminator } = inner._zod.def;
  const tag = valueAt(value, [discriminator]);
  const branch = branchesOf(inner).find((option) =>
    [...tagValues(option, discriminator)].some((word) => word === tag),
  );
  return branch ? unwrapped(branch) : inner;
}

function tagValues(branch: Form, key: string): ReadonlySet<unknown> {
  const tagForm = childForm(unwrapped(branch), key);
  return tagForm?._zod.values ?? new Set();
}

function childForm(form: Form, step: string | number): Form | undefined {
  if (form instanceof z.core.$ZodObject) {
    const shape: Readonly<Record<string, Form>> = form._zod.def.shape;
    return Object.hasOwn(shape, step) ? shape[step] : undefined;
  }
  return form instanceof z.core.$ZodArray ? form._zod.def.element : undefined;
}
