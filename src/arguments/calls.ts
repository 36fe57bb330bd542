import { airCall } from './air.ts';
import type { Call } from './call.ts';
import { checkCall } from './check.ts';
import { compareCall } from './compare.ts';
import { completionCall } from './completion.ts';
import { fansCall } from './fans.ts';
import { marginCall } from './margin.ts';
import { newCall } from './new.ts';
import { rankCall } from './rank.ts';
import { schemaCall } from './schema.ts';
import { solveCall } from './solve.ts';
import { speedsCall } from './speeds.ts';
import { supplyCall } from './supply.ts';
import { sweepCall } from './sweep.ts';
import { ventCall } from './vent.ts';

/** Every command of the program, in the order of its help. */
export const calls: readonly Call[] = [
  rankCall,
  solveCall,
  compareCall,
  sweepCall,
  marginCall,
  speedsCall,
  supplyCall,
  ventCall,
  checkCall,
  fansCall,
  airCall,
  newCall,
  schemaCall,
  completionCall(() => calls),
];
