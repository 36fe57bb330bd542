/** Shapes of a first scenario: one path through everything, a tower with a bypass, a cabinet with vents. */
export const STARTER_SHAPES = ['single', 'bypass', 'cabinet'] as const;
export type StarterShape = (typeof STARTER_SHAPES)[number];
