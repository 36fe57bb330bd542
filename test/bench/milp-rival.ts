// Mixed integer linear programming, solved by HiGHS, with curves made of straight pieces. Only for airways that are one
// path, with the fans of two banks as the choice. Whole numbers choose which banks are filled, one fan for each, the
// flow of each duty from a few steps upwards of the least that cools enough, and the piece of the speed range each bank
// runs in; between the ends of a piece pressure and sound energy are straight lines. The pressures given must be at
// least what the path loses at that flow.
// What is left out so that it becomes linear: the heat of the fans themselves (the least flow is that without it), flows
// between the steps, and the bend of the curves within a piece. So HiGHS proves the best of a problem near the one that
// was asked, and the build it names is worked out by the whole model afterwards to tell what it is worth. It names one
// build; each further row of a list would be another such search with the builds so far forbidden.
import importedHighs, { type LegacyHighs } from 'highs';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { solveBuild } from '../../src/search/solve-build.ts';
import { levelOf } from '../../src/sound/levels.ts';
import { type OptionTable, type PathTable, pathTable } from './path-tables.ts';
import { processorSeconds, type RivalResult, type Task } from './rival.ts';

// The types of the package are those of its CommonJS form; what is loaded is the other one, a function.
const loadHighs = importedHighs as unknown as () => Promise<LegacyHighs>;

/** Relative gap of the sound energy at which HiGHS may stop: 0.01 dB. */
const RELATIVE_GAP = 0.0023;

/** A sum of variables with factors, as the LP format writes it; lines must not get too long. */
function sum(terms: readonly (readonly [factor: number, name: string])[]): string {
  const used = terms.filter(([factor]) => factor !== 0);
  return used
    .map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor).toPrecision(9)} ${name}`)
    .join('\n ');
}

interface Program {
  readonly table: PathTable;
  readonly duties: readonly number[];
  readonly banks: readonly number[];
  readonly rows: string[];
  readonly cost: (readonly [number, string])[];
  readonly binaries: string[];
}

const steps = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index);
const chosen = ({ bank, option, filled }: OptionTable): string => `x_${bank}_${option}_${filled}`;
const weight = (duty: number, entry: OptionTable, flow: number, speed: number): string =>
  `l_${duty}_${entry.bank}_${entry.option}_${entry.filled}_${flow}_${speed}`;

/** Which banks are filled, and with what. */
function chooseFans({ table, banks, rows, binaries }: Program): void {
  const sets = table.filled.map((set) => `y_${set}`);
  binaries.push(...sets, ...table.options.map(chosen));
  rows.push(`${sum(sets.map((name) => [1, name]))} = 1`);
  for (const set of table.filled) {
    for (const bank of banks.filter((one) => set & (1 << one))) {
      const options = table.options.filter((entry) => entry.bank === bank && entry.filled === set);
      rows.push(`${sum([...options.map((entry) => [1, chosen(entry)] as const), [-1, `y_${set}`]])} = 0`);
    }
  }
}

/** Which flow a duty has, and what the path loses at it: w is y and z at once. */
function chooseFlow({ table, rows, binaries }: Program, duty: number): void {
  const flows = steps(table.flows);
  binaries.push(...flows.map((flow) => `z_${duty}_${flow}`));
  for (const set of table.filled) {
    const joint = flows.map((flow) => [1, `w_${duty}_${set}_${flow}`] as const);
    rows.push(`${sum([...joint, [-1, `y_${set}`]])} = 0`);
  }
  for (const flow of flows) {
    const joint = table.filled.map((set) => [1, `w_${duty}_${set}_${flow}`] as const);
    rows.push(`${sum([...joint, [-1, `z_${duty}_${flow}`]])} = 0`);
  }
}

/** Weights of the tabled speeds: those of the fan chosen, at the flow chosen, at both ends of one piece. */
function chooseSpeeds({ table, banks, rows, binaries }: Program, duty: number): void {
  const flows = steps(table.flows);
  const speeds = steps(table.speeds);
  for (const entry of table.options) {
    const weights = flows.flatMap((flow) =>
      speeds.map((speed) => [1, weight(duty, entry, flow, speed)] as const),
    );
    rows.push(`${sum([...weights, [-1, chosen(entry)]])} = 0`);
  }
  for (const bank of banks) {
    const own = table.options.filter((entry) => entry.bank === bank);
    for (const flow of flows) {
      const weights = own.flatMap((entry) =>
        speeds.map((speed) => [1, weight(duty, entry, flow, speed)] as const),
      );
      rows.push(`${sum([...weights, [-1, `z_${duty}_${flow}`]])} <= 0`);
    }
    const pieces = steps(table.speeds - 1).map((piece) => `s_${duty}_${bank}_${piece}`);
    binaries.push(...pieces);
    rows.push(`${sum(pieces.map((name) => [1, name]))} = 1`);
    for (const speed of speeds) {
      const weights = own.flatMap((entry) =>
        flows.map((flow) => [1, weight(duty, entry, flow, speed)] as const),
      );
      const ends = pieces.slice(Math.max(0, speed - 1), speed + 1).map((name) => [-1, name] as const);
      rows.push(`${sum([...weights, ...ends])} <= 0`);
    }
  }
}

/** Pressure given is at least pressure lost; the noise of the duty counts by its share. */
function balance({ table, rows, cost }: Program, duty: number, share: number): void {
  const given = table.options.flatMap((entry) =>
    (entry.tables[duty] ?? []).flatMap(({ rises, energies }, flow) =>
      rises.map((rise, speed) => {
        const name = weight(duty, entry, flow, speed);
        cost.push([share * (energies[speed] as number), name]);
        return [rise, name] as const;
      }),
    ),
  );
  const lost = table.filled.flatMap((set, index) =>
    steps(table.flows).map((flow) => {
      const name = `w_${duty}_${set}_${flow}`;
      cost.push([share * (table.vents[duty]?.[index]?.[flow] as number), name]);
      return [-(table.losses[duty]?.[index]?.[flow] as number), name] as const;
    }),
  );
  rows.push(`${sum([...given, ...lost])} >= 0`);
}

function programText(table: PathTable, shares: readonly number[], banks: number): string {
  const program: Program = {
    table,
    duties: steps(shares.length),
    banks: steps(banks),
    rows: [],
    cost: [],
    binaries: [],
  };
  chooseFans(program);
  for (const [duty, share] of shares.entries()) {
    chooseFlow(program, duty);
    chooseSpeeds(program, duty);
    balance(program, duty, share);
  }
  const rows = program.rows.map((row, index) => ` c${index}: ${row}`).join('\n');
  return `Minimize\n obj: ${sum(program.cost)}\nSubject To\n${rows}\nBinaries\n ${program.binaries.join('\n ')}\nEnd\n`;
}

/** Level of a build by the whole model [dB(A)]; null if it is not adequate. */
function trueLevel({ enclosure }: Task, options: readonly number[]): number | null {
  const plant = plantOf(enclosure);
  const { duties } = solveBuild(assemble(plant, options), fasterIsCooler(plant));
  if (!duties.every(({ adequate }) => adequate)) return null;
  return levelOf(duties.reduce((energy, { duty, point }) => energy + duty.share * point.energy, 0));
}

/**
 * The build HiGHS holds for the quietest.
 *
 * @param task an airway of one path
 * @param limit most time for HiGHS [s]
 */
export async function milpRival(task: Task, limit: number): Promise<RivalResult> {
  const highs = await loadHighs();
  const { enclosure } = task;
  const places = enclosure.places.flatMap((place, index) => (place.kind === 'bank' ? [index] : []));
  const began = processorSeconds();
  const table = pathTable(enclosure);
  const text = programText(
    table,
    enclosure.duties.map(({ share }) => share),
    places.length,
  );
  const answer = highs.solve(text, {
    time_limit: limit,
    mip_rel_gap: RELATIVE_GAP,
    random_seed: 1,
    output_flag: false,
  });
  const seconds = processorSeconds() - began;
  const values = new Map(
    Object.entries(answer.Columns).map(([name, column]) => [name, 'Primal' in column ? column.Primal : 0]),
  );
  const isOn = (name: string): boolean => (values.get(name) ?? 0) > 0.5;
  const picked = table.options.filter((entry) => isOn(chosen(entry)));
  const options = enclosure.places.map((place, index) => {
    const bank = places.indexOf(index);
    if (place.kind !== 'bank') return 0;
    return picked.find((entry) => entry.bank === bank)?.option ?? place.options.indexOf(null);
  });
  const claimed = picked.length > 0 ? levelOf(answer.ObjectiveValue).toFixed(2) : 'nothing';
  return {
    method: 'whole-number program, HiGHS',
    level: picked.length > 0 ? trueLevel(task, options) : null,
    seconds,
    proof: `${answer.Status}, of its straight pieces: ${claimed} dB(A)`,
  };
}
