/** Letters of a text shown in a message. */
const LONGEST_SHOWN = 80;

/** Why a text is not the quantity that was wanted. */
export interface Misfit {
  readonly found: string;
  readonly expected: string;
  /** The text that was probably meant. */
  readonly suggestion?: string;
}

/** What became of a text: a value in SI, or the reason why there is none. */
export type Outcome<Value> = { readonly ok: true; readonly value: Value } | Failure;

/** The outcome of a text that does not fit. */
export interface Failure {
  readonly ok: false;
  readonly misfit: Misfit;
}

/**
 * A failed outcome. A page of text in the place of a number is cut, and nothing is suggested for it.
 *
 * @param found in words
 * @param expected in words
 * @param suggestion text that was probably meant
 */
export function misfit(found: string, expected: string, suggestion?: string): Failure {
  const useful = suggestion !== undefined && suggestion.length <= LONGEST_SHOWN;
  return { ok: false, misfit: { found: clip(found), expected, ...(useful ? { suggestion } : {}) } };
}

/**
 * A text no longer than a line.
 *
 * @param text of any length
 */
export function clip(text: string): string {
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN - 3)}...` : text;
}
