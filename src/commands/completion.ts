import { type CommandWords, completionScript, type Shell } from './completion-scripts.ts';
import { EXIT, type ExitCode } from './console.ts';

/** Writes a script that tells a shell how to complete a line. */
export async function run(shell: Shell, commands: readonly CommandWords[]): Promise<ExitCode> {
  process.stdout.write(completionScript(shell, commands));
  return EXIT.answered;
}
