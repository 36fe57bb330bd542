import { expect, it } from 'vitest';
import { inflow } from '../../src/presentation/inflow.ts';
import { duty, leg } from './sample-outcomes.ts';

it('air comes in through legs that begin outside, and through those that run in reverse from there', () => {
  const legs = [
    leg('intake', 'outside', 'core', 0.008, []),
    leg('gap', 'outside', 'core', -0.001, []),
    leg('through', 'core', 'attic', 0.004, []),
    leg('exhaust', 'core', 'outside', 0.009, []),
    leg('lid', 'attic', 'outside', -0.002, []),
  ];
  expect(inflow(duty('work', 1, { legs }))).toBeCloseTo(0.01, 12);
});
