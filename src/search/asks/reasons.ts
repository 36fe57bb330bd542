/** Why builds were put out that may well be adequate: something else is asked of them. */
export const ASK_REASONS = [
  'dearer than asked',
  'of more fan power than asked',
  'of more current than a header may give',
  'of more models than asked',
  'deeper than asked',
  'too warm with a dead fan',
  'louder than asked',
  'more tonal than asked',
  'beyond the end of the list',
] as const;

export type AskReason = (typeof ASK_REASONS)[number];
