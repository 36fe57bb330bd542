import type { Call } from './call.ts';
import { checkCall } from './check.ts';
import { rankCall } from './rank.ts';
import { solveCall } from './solve.ts';

/** Every command of the program, in the order of its help. */
export const calls: readonly Call[] = [rankCall, solveCall, checkCall];
