import type { Enclosure } from '../enclosure/enclosure.ts';
import { marginCsv, marginDocument } from '../presentation/questions/margin-data.ts';
import { marginView } from '../presentation/questions/margin-view.ts';
import { marginMatrix } from '../questions/margin/margin.ts';
import { chosenBuild, dutyRefusal, refuseCall } from './chosen-build.ts';
import { type ScenarioOptions, sourceOf, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';

/** Options of `margin`, in SI. */
export interface MarginCommandOptions extends ScenarioOptions {
  readonly build: string | undefined;
  readonly duty: string | undefined;
  /** One speed for all banks [%]. */
  readonly speed: number | undefined;
  /** Room temperatures [K]; those of the duties if none. */
  readonly room: readonly number[];
  /** Altitudes beside the scenario's own [m]. */
  readonly altitude: readonly number[];
  /** Shares of what filters may hold [-]. */
  readonly dust: readonly number[];
  /** Shares by which fans run slower [-]. */
  readonly slower: readonly number[];
  /** Whether one fan of each place is tried dead. */
  readonly dead: boolean;
  readonly csv: boolean;
}

/** Between the warmest room of the duties and the hotter one that is tried beside them [K]. */
const HOTTER = 5;

/** Rooms of the duties, coolest first, and one that is hotter. */
function usualRooms({ duties }: Enclosure): readonly number[] {
  const rooms = [...new Set(duties.map(({ room }) => room))].sort((one, other) => one - other);
  return [...rooms, Math.max(...rooms) + HOTTER];
}

/** Tries a build under hot rooms, at altitude, with dust, a dead fan and a low supply. */
export function run(options: MarginCommandOptions): Promise<ExitCode> {
  return withScenario('margin', options, async (work) => {
    const { enclosure, console, meta } = work;
    const refusal = dutyRefusal(work, options.duty);
    if (refusal !== null) return refuseCall(work, options, refusal);
    const chosen = await chosenBuild(work, options.build);
    if ('refusal' in chosen) return refuseCall(work, options, chosen.refusal);
    const base = { source: sourceOf(work, options), enclosure, build: chosen.build, lost: chosen.lost };
    const found = marginMatrix(base, {
      rooms: options.room.length > 0 ? options.room : usualRooms(enclosure),
      altitudes: options.altitude,
      dust: options.dust,
      slower: options.slower,
      lostFans: options.dead,
      speed: options.speed === undefined ? undefined : options.speed / 100,
      duty: options.duty,
    });
    if (typeof found === 'string') return refuseCall(work, options, found);
    const builds = [chosen.build];
    if (options.csv) console.out(marginCsv(found));
    else
      work.answer(
        () => marginDocument(enclosure.title, found, withInvented(meta, enclosure, builds)),
        () =>
          `${marginView(enclosure.title, found, { paint: console.paint, width: console.width })}${inventedNote(enclosure, builds)}`,
      );
    return found.cells.every(({ rescue }) => rescue.kind === 'speeds') ? EXIT.answered : EXIT.noneAdequate;
  });
}
