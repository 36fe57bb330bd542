import { bounded, written } from '../quantities/written.ts';

/** Form of a free share of a face: above 0 %, below 100 %. */
export const openShare = bounded(
  written.percent,
  'more than 0 and less than 1 (100 %)',
  (value) => value > 0 && value < 1,
);
