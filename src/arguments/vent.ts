import { readRectangle } from '../quantities/lists.ts';
import { PROCESSES } from '../questions/vent/sheet-rules.ts';
import { ABOVE_ZERO, asQuantity, type Fits } from './as-quantity.ts';
import { call } from './call.ts';
import { buildOption, checkSpeed, csvOption } from './question-options.ts';
import { scenarioOptions } from './scenario-options.ts';

/** A share that an opening can keep. */
const SHARE: Fits = [(value) => value > 0 && value < 1, 'more than 0 % and less than 100 %'];

/** Sides of a field, as the parser reads them [m]. */
function asField(text: string | undefined) {
  if (text === undefined) return undefined;
  const read = readRectangle(text);
  if (!read.ok) throw new Error(`--field: found ${read.misfit.found}, expected ${read.misfit.expected}`);
  if (!(read.value.width > 0 && read.value.height > 0))
    throw new Error(`--field: found ${text}, expected sides above zero`);
  return read.value;
}

/** `vent`: how large an opening must be, and which holes to cut. */
export const ventCall = call({
  usage: 'vent <scenario>',
  describe: 'how large an opening must be, the best pattern of holes, and files to cut it',
  options: (args) =>
    csvOption(buildOption(scenarioOptions(args)))
      .option('opening', {
        type: 'string',
        requiresArg: true,
        describe: 'the element to find holes for; the only perforated sheet if absent',
      })
      .option('duty', {
        type: 'string',
        requiresArg: true,
        describe: 'whose speeds count; the loudest if absent',
      })
      .option('speed', {
        type: 'number',
        requiresArg: true,
        describe: 'one speed for all banks, percent; the quietest that hold the limits now if absent',
      })
      .option('aim', {
        choices: ['flow', 'limits'] as const,
        default: 'flow' as const,
        describe: 'keep a share of the flow, or let the limits be held at whatever speeds',
      })
      .option('keep', {
        type: 'string',
        requiresArg: true,
        default: '95 %',
        coerce: asQuantity('keep', 'percent', SHARE),
        describe: 'share of the flow that is kept',
      })
      .option('field', { type: 'string', requiresArg: true, coerce: asField, describe: 'sides of the field' })
      .option('sheet', {
        type: 'string',
        requiresArg: true,
        coerce: asQuantity('sheet', 'length', ABOVE_ZERO),
        describe: 'thickness of the sheet',
      })
      .option('process', {
        choices: PROCESSES,
        default: 'laser' as const,
        describe: 'how the holes are made',
      })
      .option('hole', {
        type: 'string',
        requiresArg: true,
        coerce: asQuantity('hole', 'length', ABOVE_ZERO),
        describe: 'the only size of holes; the best if absent',
      })
      .option('web', {
        type: 'string',
        requiresArg: true,
        coerce: asQuantity('web', 'length', ABOVE_ZERO),
        describe: 'narrowest web between holes; by process and sheet if absent',
      })
      .option('blades', {
        type: 'string',
        requiresArg: true,
        coerce: asQuantity('blades', 'length', ABOVE_ZERO),
        describe: 'from the sheet to moving blades; by the drawing, or 5 mm, if absent',
      })
      .option('svg', { type: 'string', requiresArg: true, describe: 'writes the best pattern to this file' })
      .option('dxf', { type: 'string', requiresArg: true, describe: 'the same as DXF' })
      .option('force', { type: 'boolean', default: false, describe: 'replace files that are there' })
      .check(({ speed }) => {
        checkSpeed(speed);
        return true;
      })
      .example('$0 vent scenarios/desk-scanner.yaml --opening rear', 'holes of the rear panel, for a laser')
      .example(
        '$0 vent box.yaml --opening rear --process drill --keep "90 %" --svg rear.svg',
        'holes to drill, with a drawing',
      ),
  run: async (options) => (await import('../commands/vent.ts')).run(options),
});
