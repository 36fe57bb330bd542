import { checkView } from '../presentation/check-view.ts';
import { checkDocument } from '../presentation/json.ts';
import { spaceSize } from '../search/space.ts';
import { type ScenarioOptions, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';

/** Checks the files of a scenario and says what it holds. */
export function run(options: ScenarioOptions): Promise<ExitCode> {
  return withScenario('check', options, ({ enclosure, console, meta, answer }) => {
    const space = spaceSize(enclosure);
    answer(
      () => checkDocument(enclosure, space, meta),
      () => checkView(enclosure, space, { file: options.scenario, paint: console.paint }),
    );
    return EXIT.answered;
  });
}
