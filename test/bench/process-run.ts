import { spawnSync } from 'node:child_process';

/** What is left of a process that has ended. */
export interface ProcessRun {
  /** Wall time [ms]. */
  readonly took: number;
  /** Processor time of all its threads [ms]; not known of one that was killed. */
  readonly processor: number | null;
  /** Most memory it held at a time [MB]; not known of one that was killed. */
  readonly memory: number | null;
  /** Exit code; null if it was killed for taking too long. */
  readonly code: number | null;
  readonly output: string;
}

/** Tells on channel 3, when the process ends, what it used: microseconds of processor time and kilobytes held. */
const TELL_MEMORY =
  "data:text/javascript,import{writeSync}from'node:fs';process.on('exit',()=>writeSync(3,JSON.stringify(process.resourceUsage())))";
const MOST_OUTPUT = 1 << 26;

/**
 * Runs node and waits for it.
 *
 * @param args of node
 * @param patience time after which it is killed [ms]
 * @throws Error if it ends with a fault; exit code 1 is an answer too (nothing adequate)
 */
export function runNode(args: readonly string[], patience: number): ProcessRun {
  const began = process.hrtime.bigint();
  const { status, signal, stdout, stderr, output } = spawnSync(
    process.execPath,
    ['--import', TELL_MEMORY, ...args],
    {
      stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
      encoding: 'utf8',
      timeout: patience,
      killSignal: 'SIGKILL',
      maxBuffer: MOST_OUTPUT,
    },
  );
  const took = Number(process.hrtime.bigint() - began) * 1e-6;
  if (signal === 'SIGKILL') return { took, processor: null, memory: null, code: null, output: '' };
  if (status !== 0 && status !== 1) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`);
  const used = JSON.parse(output[3] ?? '') as NodeJS.ResourceUsage;
  const processor = (used.userCPUTime + used.systemCPUTime) / 1000;
  return { took, processor, memory: used.maxRSS / 1024, code: status, output: stdout };
}
