import { type Document, type Meta, toText } from '../presentation/document.ts';
import { airCsv, airDocument, airView } from '../presentation/questions/air-view.ts';
import { airNeed, airNeedTable, USUAL_AROUND } from '../questions/air-need.ts';
import { refuseCall } from './chosen-build.ts';
import { type CommonOptions, EXIT, type ExitCode, openConsole } from './console.ts';
import { VERSION } from './version.ts';

/** Options of `air`, in SI. */
export interface AirOptions extends CommonOptions {
  readonly power: number | undefined;
  readonly rise: number | undefined;
  readonly limit: number | undefined;
  readonly room: number | undefined;
  readonly altitude: number | undefined;
  readonly csv: boolean;
}

/** Rise taken if nothing is said of it [K]. Common practice, no source. */
const USUAL_RISE = 10;

/** Tells the air that carries a heat away. */
export function run(options: AirOptions): Promise<ExitCode> {
  const console = openConsole(options);
  const meta: Meta = { version: VERSION, command: 'air' };
  const around = {
    ...USUAL_AROUND,
    ...(options.room === undefined ? {} : { room: options.room }),
    ...(options.altitude === undefined ? {} : { altitude: options.altitude }),
  };
  const { power = 0, limit, rise = limit === undefined ? USUAL_RISE : limit - around.room } = options;
  if (!(rise > 0)) {
    const message = 'the air of the room is as warm as the limit: no flow carries heat away';
    refuseCall({ console, meta }, options, message);
    return Promise.resolve(EXIT.noneAdequate);
  }
  const answer = { need: airNeed(power, rise, around), table: airNeedTable(power, rise, around), around };
  const document = (): Document => airDocument(answer, meta);
  if (options.csv) console.out(airCsv(answer));
  else if (options.json) console.out(toText(document()));
  else console.out(airView(answer, { paint: console.paint, width: console.width }));
  return Promise.resolve(EXIT.answered);
}
