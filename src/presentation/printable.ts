/** Controls, invisible format characters, line separators, halves of characters. */
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;
const UNPRINTABLE_BUT_TAB = /[^\P{Cc}\t]|[\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;
const REPLACEMENT = '\uFFFD';

/**
 * A text from a file made fit for a terminal: what would move the cursor, colour the text or hide in it is
 * shown as a replacement mark.
 *
 * @param text of one line
 */
export function printable(text: string): string {
  return text.replace(UNPRINTABLE, REPLACEMENT);
}

/**
 * The same for a line that quotes a file, where a tab has to stay one.
 *
 * @param text of one line
 */
export function printableWithTabs(text: string): string {
  return text.replace(UNPRINTABLE_BUT_TAB, REPLACEMENT);
}
