/** What noise is weighed against: the price of the fans, their depth in a leg, or the margin to the limits. */
export const FRONT_AXES = ['price', 'depth', 'margin'] as const;
export type FrontAxis = (typeof FRONT_AXES)[number];
