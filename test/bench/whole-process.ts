import { spawnSync } from 'node:child_process';
import { median } from './median.ts';

const ROUNDS = 10;
const COMMAND = ['dist/hushwright.js', 'rank', 'scenarios/desk-scanner.yaml'];
const BARE = ['-e', '0'];

/** Wall time of one run of node [ms]; exit code 1 is an answer too (nothing adequate). */
function timeOf(args: readonly string[]): number {
  const began = process.hrtime.bigint();
  const { status, stderr, error } = spawnSync(process.execPath, args, {
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const took = Number(process.hrtime.bigint() - began) * 1e-6;
  if (error) throw error;
  if (status !== 0 && status !== 1) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`);
  return took;
}

/** Measures and prints the time of a whole ranking against that of a process that does nothing, in turn. */
export function benchWholeProcess(): void {
  timeOf(BARE);
  timeOf(COMMAND);
  const bare: number[] = [];
  const command: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    bare.push(timeOf(BARE));
    command.push(timeOf(COMMAND));
  }
  const own = median(command);
  const least = median(bare);
  console.log(`node -e 0: ${least.toFixed(0)} ms`);
  console.log(`node ${COMMAND.join(' ')}: ${own.toFixed(0)} ms, ${(own / least).toFixed(2)} times that`);
}
