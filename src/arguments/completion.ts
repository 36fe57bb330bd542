import { SHELLS } from '../commands/completion-scripts.ts';
import { type Call, call } from './call.ts';
import { optionTable } from './option-table.ts';

/**
 * `completion`: lets a shell complete commands and options.
 *
 * @param calls all of the program, this one as well: asked for when the command runs
 */
export function completionCall(calls: () => readonly Call[]): Call {
  return call({
    usage: 'completion <shell>',
    describe: 'a script with which a shell completes commands and options',
    options: (args) =>
      args
        .positional('shell', { choices: SHELLS, demandOption: true, describe: 'which shell' })
        .example('$0 completion bash > hushwright.bash', 'then source it'),
    run: async ({ shell }) => {
      return (await import('../commands/completion.ts')).run(shell, optionTable(calls()));
    },
  });
}
