/** How the parts of a text stand out; the edge decides between colour and none. A paint adds no width. */
export interface Paint {
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly strong: (text: string) => string;
}

/** What a paint can do with a text. */
export type Tone = keyof Paint;

/** No colour at all. */
export const plain: Paint = {
  good: (text) => text,
  bad: (text) => text,
  faint: (text) => text,
  strong: (text) => text,
};
