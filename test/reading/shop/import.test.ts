import { load } from 'js-yaml';
import { describe, expect, it } from 'vitest';
import { readCatalogs } from '../../../src/reading/catalog-file.ts';
import type { Problem } from '../../../src/reading/problem.ts';
import { type ImportedFans, importFans } from '../../../src/reading/shop/import-fans.ts';

const CURVES: readonly { file: string; text: string }[] = [];

function made(text: string, curves = CURVES): ImportedFans {
  return importFans({ family: 'from the shop', lists: [{ file: 'shop.csv', text }], curves });
}

function fansOf({ text }: ImportedFans) {
  const outcome = readCatalogs([{ file: 'made.yaml', text: text ?? '' }]);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
  return outcome.fans;
}

const HEAD = 'fan,size,depth,flow,pressure,level,speed,power,price';

describe("a shop's list", () => {
  // Conversions by hand: 1 CFM = 0.3048³ m³/min, 1 mmH2O = 9.80665 Pa.
  it('is read with units in its heads, in its cells or in both', () => {
    const fans = fansOf(
      made(
        [
          'Model,Frame (mm),Thickness [mm],Airflow CFM,Static pressure,Noise dB(A),RPM,Watts,Price €',
          'one,80,25,32,1.9 mmH2O,24,2000,1.1,9',
          'two,8 cm,1 in,54.4 m³/h,18.63 Pa,2.4 B,33.3333333333 1/s,1100 mW,€ 9.50',
        ].join('\n'),
      ),
    );
    const [one, two] = fans;
    expect(one?.curve.freeDelivery).toBeCloseTo((32 * 0.3048 ** 3) / 60, 12);
    expect(one?.curve.shutOff).toBeCloseTo(1.9 * 9.80665, 9);
    expect([one?.size, one?.depth, one?.price, one?.provenance]).toEqual([0.08, 0.025, 9, 'box']);
    expect(two?.depth).toBeCloseTo(0.0254, 12);
    expect(two?.fullSpeed).toBeCloseTo(one?.fullSpeed ?? 0, 9);
    expect(two?.ratings[0]?.level).toBeCloseTo(one?.ratings[0]?.level ?? 0, 9);
    expect([two?.power, two?.price]).toEqual([1.1, 9.5]);
  });

  it('is read with semicolons, decimal commas, quotation marks, a byte order mark and Windows line ends', () => {
    const text =
      '\uFEFFfan;size mm;depth mm;flow m³/h;pressure Pa;level dBA;rpm;power W;price\r\n' +
      '"quiet; ""grey""";80;25;54,4;18,6;24,5;2000;1,1;"9,50"\r\n\r\n';
    const [fan] = fansOf(made(text));
    expect(fan?.id).toBe('quiet-grey');
    expect(fan?.curve.freeDelivery).toBeCloseTo(54.4 / 3600, 12);
    expect([fan?.power, fan?.price, fan?.ratings[0]?.level]).toEqual([1.1, 9.5, 24.5]);
  });

  it('is read with tabs, a frame in one column, and power from voltage and current', () => {
    const text =
      'name\tsize\tflow CFM\tpressure Pa\tnoise dBA\trpm\tvoltage V\tcurrent A\n' +
      'a\t92 x 92 x 25 mm\t45\t20\t26\t1900\t12\t0.1\nb\t60x15 mm\t13\t18\t25\t3200\t12\t0.05\n';
    const fans = fansOf(made(text));
    expect(fans.map(({ size, depth }) => [size, depth])).toEqual([
      [0.092, 0.025],
      [0.06, 0.015],
    ]);
    expect(fans.map(({ power }) => power)).toEqual([1.2, 0.6]);
  });

  it('without a power gets an estimate that says so', () => {
    const result = made('fan,size mm,depth mm,flow m3/h,pressure Pa,level dBA,rpm\na,80,25,54,20,24,2000\n');
    // Derived: on p0·(1 − x/2 − x²/2) the power x·p is largest at x = (√7 − 1)/3, 0.3155 of Q0·p0; over 0.15.
    const best = (Math.sqrt(7) - 1) / 3;
    const air = best * (1 - best / 2 - best ** 2 / 2) * (54 / 3600) * 20;
    const [fan] = fansOf(result);
    expect(fan?.power).toBeGreaterThan(0.95 * (air / 0.15));
    expect(fan?.power).toBeLessThan(1.05 * (air / 0.15));
    expect(result.text).toContain('power estimated');
  });

  it('keeps good rows, and tells each bad one by its line and cell', () => {
    const rows = [
      HEAD,
      'good,80 mm,25 mm,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,9',
      'no-unit,80,25 mm,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,9',
      '"two',
      'lines",80 mm,,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,9',
      'furlongs,80 mm,25 mm,54 furlongs,20 Pa,24 dBA,2000 rpm,1 W,9',
      'thousand,80 mm,25 mm,54 m³/h,20 Pa,24 dBA,"1,200 rpm",1 W,9',
      'good,80 mm,25 mm,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,9',
      'free,80 mm,25 mm,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,ask',
      ',80 mm,25 mm,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,9',
      'last,80 mm,25 mm,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,9',
    ];
    const result = made(rows.join('\n'));
    expect(fansOf(result).map(({ id }) => id)).toEqual(['good', 'last']);
    expect(result.count).toBe(2);
    const told = (problem: Problem | undefined) => [problem?.line, problem?.column, problem?.code];
    expect(result.problems.map(told)).toEqual([
      [3, 9, 'wrong-value'],
      [4, 1, 'missing-key'],
      [6, 22, 'wrong-value'],
      [7, 43, 'wrong-value'],
      [8, 1, 'duplicate-name'],
      [9, 52, 'wrong-value'],
      [10, 1, 'missing-key'],
    ]);
    expect(result.problems[0]).toMatchObject({ found: '80 without a unit', suggestion: '80 mm' });
    expect(result.problems[3]).toMatchObject({ suggestion: '1.200 rpm or 1200 rpm' });
    expect(result.problems[4]?.message).toBe('a second fan is called "good", after shop.csv:2');
  });

  it('has doubts told by row and cell', () => {
    const rows = [
      HEAD,
      'slip,80 mm,25 mm,54 m³/h,2 Pa,24 dBA,2000 rpm,1 W,9',
      'x,80 mm,25 mm,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,9',
    ];
    const { doubts } = made(rows.join('\n'));
    const pressure = doubts.find(({ suggestion }) => suggestion === '2 mmH2O');
    expect([pressure?.file, pressure?.line, pressure?.column]).toEqual(['shop.csv', 2, 26]);
  });

  it('tells columns it makes nothing of', () => {
    const { doubts } = made(
      `${HEAD},presure,colour\na,80 mm,25 mm,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,9,x,y\n`,
    );
    const unused = doubts.filter(({ code }) => code === 'unused');
    expect(unused[1]?.message).toBe('nothing is made of the column "colour"');
    expect(unused.map(({ column, suggestion }) => [column, suggestion])).toEqual([
      [HEAD.length + 2, 'pressure'],
      [HEAD.length + 10, undefined],
    ]);
  });

  it.each([
    ['an empty file', '', 'empty-file', 'the file is empty'],
    ['no rows', `${HEAD}\n`, 'empty-file', 'there is no row below the first'],
    ['no column of fans', 'size,depth\n80 mm,25 mm\n', 'missing-key', 'no column is called "fan"'],
    ['an open quotation mark', `${HEAD}\n"a,80 mm\n`, 'syntax', 'a quotation mark is not closed'],
    ['a zero byte', `${HEAD}\na\0,80 mm\n`, 'not-text', 'not a text file in UTF-8'],
    ['too many rows', `${HEAD}\n${'a\n'.repeat(6000)}`, 'too-large', 'more than 5000 rows'],
    ['too many columns', `fan,size\n${'a,'.repeat(300)}\n`, 'too-large', 'more than 200 columns'],
    [
      'a line without an end',
      `${HEAD}\n${'a'.repeat(30_000)}`,
      'too-large',
      'a line has more than 20000 letters',
    ],
    ['too long a text', `${HEAD}\n${'a\n'.repeat(1_100_000)}`, 'too-large', 'more than 2000000 letters'],
  ])('is refused with %s', (_, text, code, message) => {
    const result = made(text);
    expect(result.text).toBeUndefined();
    expect(result.problems).toMatchObject([{ code, message, file: 'shop.csv' }]);
  });

  it('is left off after hundreds of problems', () => {
    const { problems } = made(`${HEAD}\n${'a,b,c,d,e,f,g,h,i\n'.repeat(1000)}`);
    expect(problems.length).toBeLessThan(600);
    expect(problems.at(-1)?.message).toBe('too many problems: rows from here on are not read');
  });
});

describe('digitised curves', () => {
  const list = 'fan,size mm,depth mm,level dBA,rpm,power W\ngrey-80,80,25,24,2000,1.1\n';
  // Clicks out of order, one a little left of the axis and one a little below it.
  const clicks = 'flow m³/h,pressure mmH2O\n30.2,1.02\n-0.3,2.04\n10,1.8\n20,1.5\n10,1.7\n51,-0.02\n';

  it('belong to the fan their file is named for', () => {
    const result = made(list, [{ file: 'curves/grey-80.csv', text: clicks }]);
    expect(result.problems).toEqual([]);
    const [fan] = fansOf(result);
    const { flows = [], pressures = [] } = fan?.curve.raw ?? {};
    expect(flows.map((flow) => 3600 * flow)).toEqual(
      [0, 10, 20, 30.2, 51].map((flow) => expect.closeTo(flow, 9)),
    );
    const water = [2.04, 1.75, 1.5, 1.02, 0].map((head) => head * 9.80665);
    // Five digits are kept.
    expect(pressures).toEqual(water.map((pressure) => expect.closeTo(pressure, 3)));
    expect(fan?.provenance).toBe('datasheet');
  });

  it('may stand in one file, with the fan in a column', () => {
    const long = `fan,flow CFM,pressure Pa\n${['grey 80', 'two']
      .flatMap((id) => [`${id},0,20`, `${id},15,14`, `${id},32,0`])
      .join('\n')}\n`;
    const result = made(`${list}two,60,15,25,3000,1\n`, [{ file: 'all.csv', text: long }]);
    expect(result.problems).toEqual([]);
    expect(fansOf(result).map(({ curve }) => curve.synthesised)).toEqual([false, false]);
  });

  it.each([
    ['no names of columns', '0,20\n10,15\n', 1, 'the first row does not name the columns'],
    ['no unit', 'flow,pressure Pa\n0,20\n10,15\n20,0\n', 2, 'this does not fit here'],
    ['a missing pressure', 'flow m³/h,pressure Pa\n0,20\n10,\n20,0\n', 3, '"pressure" is missing'],
    [
      'two points',
      'flow m³/h,pressure Pa\n0,20\n20,0\n',
      2,
      'curve of "grey-80": too few points for a curve',
    ],
    [
      'no shut-off',
      'flow m³/h,pressure Pa\n9,20\n15,10\n20,0\n',
      2,
      'curve of "grey-80": a curve begins at shut-off',
    ],
    [
      'points below an axis',
      'flow m³/h,pressure Pa\n0,20\n15,-10\n20,0\n',
      2,
      'curve of "grey-80": a point lies below an axis',
    ],
    [
      'hundreds of points',
      `flow m³/h,pressure Pa\n${Array.from({ length: 600 }, (_, at) => `${at},${600 - at}`).join('\n')}`,
      2,
      'curve of "grey-80": too many points',
    ],
  ])('are refused with %s', (_, text, line, message) => {
    const result = made(list, [{ file: 'grey-80.csv', text }]);
    expect(result.problems[0]).toMatchObject({ file: 'grey-80.csv', line, message });
    expect(result.text).toBeUndefined();
  });

  it('that stand twice, or belong to nobody, are told', () => {
    const again = made(list, [
      { file: 'a/grey-80.csv', text: clicks },
      { file: 'b/grey-80.csv', text: clicks },
      { file: 'other.csv', text: clicks },
    ]);
    expect(again.problems.map(({ file, message }) => [file, message])).toEqual([
      ['b/grey-80.csv', 'a second curve of "grey-80"'],
      ['other.csv', 'no row of a list is called "other", so this curve has no fan'],
    ]);
  });
});

describe('the catalog that is written', () => {
  it('says the same to another reader of YAML, whatever names and notes hold', () => {
    const rows = ['true', '12', 'no: {x}', "it's", 'a # b', '"quoted"', 'ö 🙂', '- dash', '1e3'].map(
      (note, at) => {
        return `fan-${at},80 mm,25 mm,54 m³/h,20 Pa,24 dBA,2000 rpm,1 W,9,"${note.replaceAll('"', '""')}"`;
      },
    );
    const result = importFans({
      family: 'shop: # 1',
      lists: [{ file: 'shop.csv', text: `${HEAD},note\n${rows.join('\n')}\n` }],
      curves: [],
    });
    const parsed = load(result.text ?? '') as { family: string; fans: { note: string }[] };
    expect(parsed.family).toBe('shop: # 1');
    expect(parsed.fans.map(({ note }) => note)).toEqual([
      'true',
      '12',
      'no: {x}',
      "it's",
      'a # b',
      '"quoted"',
      'ö 🙂',
      '- dash',
      '1e3',
    ]);
    expect(fansOf(result)).toHaveLength(9);
  });
});
