import { FAN_ORDERS, type FanOrder, type FanWish } from '../questions/fans/fan-list.ts';
import { call } from './call.ts';
import { quantityOption } from './quantity-option.ts';
import { answerOptions, catalogOptions } from './scenario-options.ts';

/** What `fans` is told of the wanted fans, as written. */
interface Wanted {
  readonly size: readonly string[];
  readonly depth: string | undefined;
  readonly level: string | undefined;
  readonly price: number | undefined;
  readonly flow: string | undefined;
  readonly pressure: string | undefined;
  readonly by: FanOrder;
}

function wishOf({ size, depth, level, price, flow, pressure, by }: Wanted): FanWish {
  if ((flow === undefined) !== (pressure === undefined)) {
    throw new Error('--flow and --pressure go together: the asked flow, and what the path loses at it');
  }
  const path =
    flow === undefined || pressure === undefined
      ? undefined
      : {
          flow: quantityOption('flow', 'flow', flow),
          pressure: quantityOption('pressure', 'pressure', pressure),
        };
  if (path && !(path.flow > 0 && path.pressure > 0)) throw new Error('--flow and --pressure are more than 0');
  return {
    sizes: size.map((text) => quantityOption('length', 'size', text)),
    depth: depth === undefined ? undefined : quantityOption('length', 'depth', depth),
    level: level === undefined ? undefined : quantityOption('level', 'level', level),
    price,
    path,
    by,
  };
}

/** `fans`: the fans of the catalogs, or a catalog from a shop's lists. */
export const fansCall = call({
  usage: 'fans',
  describe: 'the fans of the catalogs, filtered and sorted; or a catalog from CSV',
  options: (args) =>
    answerOptions(catalogOptions(args))
      .option('size', {
        type: 'string',
        array: true,
        nargs: 1,
        default: [] as string[],
        describe: 'only fans of this frame, such as "80 mm"',
      })
      .option('depth', { type: 'string', requiresArg: true, describe: 'only fans no deeper' })
      .option('level', { type: 'string', requiresArg: true, describe: 'only fans no louder, at 1 m' })
      .option('price', { type: 'number', requiresArg: true, describe: 'only fans no dearer' })
      .option('flow', { type: 'string', requiresArg: true, describe: 'asked flow, such as "20 m³/h"' })
      .option('pressure', {
        type: 'string',
        requiresArg: true,
        describe: 'what the path loses at that flow, such as "8 Pa"',
      })
      .option('by', { choices: FAN_ORDERS, default: 'fan' as FanOrder, describe: 'order of the list' })
      .option('stock', {
        type: 'boolean',
        default: false,
        describe: 'lists perforations, meshes and the like instead of fans',
      })
      .option('from', {
        type: 'string',
        array: true,
        nargs: 1,
        default: [] as string[],
        describe: 'CSV list of a shop to make a catalog from',
      })
      .option('curves', {
        type: 'string',
        array: true,
        nargs: 1,
        default: [] as string[],
        describe: 'CSV of digitised curves for it',
      })
      .option('to', {
        type: 'string',
        requiresArg: true,
        describe: 'file for the catalog; else it goes to standard output',
      })
      .option('family', {
        type: 'string',
        requiresArg: true,
        default: 'my fans',
        describe: 'name of the family in it',
      })
      .option('force', { type: 'boolean', default: false, describe: 'replace a file that is there' })
      .check((given) => {
        wishOf(given);
        const alone = given.from.length === 0 && (given.curves.length > 0 || given.to !== undefined);
        if (alone) throw new Error('--curves and --to need a list: give it with --from');
        return true;
      })
      .example(
        '$0 fans --size "80 mm" --flow "20 m³/h" --pressure "8 Pa" --by level',
        'the quietest for a path',
      )
      .example('$0 fans --from shop.csv --to my-fans.yaml', 'a catalog from a list'),
  run: async (given) => (await import('../commands/fans.ts')).run({ ...given, wish: wishOf(given) }),
});
