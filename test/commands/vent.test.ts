import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { measuredDxf, measuredSvg } from '../presentation/vent/measured-area.ts';
import { hushwright, scenarioText, written } from './program.ts';

const SCANNER = 'scenarios/desk-scanner.yaml';
const BUILD = ['--build', 'as-built', '--duty', 'scanning', '--speed', '60'];

const patternForm = z.object({
  scenarioLine: z.string(),
  holes: z.number(),
  area_m2: z.number(),
  flow_m3_s: z.number(),
  flowShare: z.number(),
  reaches: z.boolean(),
});
const bandForm = z.object({ low: z.number(), expected: z.number(), high: z.number() });
const ventForm = z.object({
  result: z.object({
    sure: z.object({
      pattern: z.object({
        flow_m3_s: bandForm,
        subject: z.string(),
        margin_K: bandForm,
        level_dBA: bandForm,
        holding: z.number(),
      }),
    }),
    keepsFlow_m2: z.number(),
    holdsLimits_m2: z.number().nullable(),
    knee: z.object({ area_m2: z.number(), flowShare: z.number() }),
    patterns: z.array(patternForm),
    curve: z.array(
      z.object({ area_m2: z.number(), flowShare: z.number(), temperature_K: z.number().nullable() }),
    ),
  }),
});
const solveForm = z.object({
  result: z.object({
    bands: z.object({
      duties: z.array(
        z.object({
          duty: z.string(),
          holding: z.number(),
          level_dBA: bandForm,
          limits: z.array(z.object({ part: z.string(), margin_K: bandForm })),
          legs: z.array(z.object({ leg: z.string(), flow_m3_s: bandForm })),
        }),
      ),
    }),
    outcome: z.object({
      duties: z.array(
        z.object({
          duty: z.string(),
          legs: z.array(z.object({ leg: z.string(), massFlow_kg_s: z.number(), flow_m3_s: z.number() })),
        }),
      ),
    }),
  }),
});

function folder(): string {
  return mkdtempSync(join(tmpdir(), 'hushwright-'));
}

function ventOf(args: readonly string[]) {
  const run = hushwright(['vent', SCANNER, '--json', ...args]);
  return { run, result: ventForm.parse(JSON.parse(run.out)).result };
}

describe('a rectangle of 120 x 60 mm and a limit', () => {
  const files = folder();
  const svg = join(files, 'rear.svg');
  const dxf = join(files, 'rear.dxf');
  const where = ['--opening', 'rear', '--field', '120 x 60 mm', '--sheet', '1 mm', ...BUILD];
  const { run, result } = ventOf([...where, '--keep', '80 %', '--svg', svg, '--dxf', dxf]);
  const [best] = result.patterns;

  it('answers the least free area, the knee, the pattern, and drawings of as much hole area', () => {
    expect(run.code).toBe(0);
    expect(best?.reaches).toBe(true);
    expect(best?.flowShare).toBeGreaterThanOrEqual(0.8);
    // Whole holes only: 2 % and the share at the knee are sanity, no source.
    expect(result.keepsFlow_m2).toBeLessThanOrEqual((best?.area_m2 ?? 0) * 1.02);
    expect(result.knee.flowShare).toBeGreaterThan(0.3);
    const shares = result.curve.map(({ flowShare }) => flowShare);
    expect(shares).toEqual([...shares].sort((one, other) => one - other));
    // With next to no opening temperatures are beyond all use, and none are told.
    const temperatures = result.curve.flatMap(({ temperature_K }) => temperature_K ?? []);
    expect(temperatures.length).toBeGreaterThan(30);
    expect(temperatures).toEqual([...temperatures].sort((one, other) => other - one));
    // 0.1 % is what a drawing is asked to keep.
    for (const measured of [measuredSvg(readFileSync(svg, 'utf8')), measuredDxf(readFileSync(dxf, 'utf8'))]) {
      expect(Math.abs((measured.area * 1e-6) / (best?.area_m2 ?? 0) - 1)).toBeLessThan(1e-3);
      expect([measured.width, measured.height, measured.outlines]).toEqual([120, 60, best?.holes]);
    }
  });

  it('writes what it was told to and nothing else, and never over a file without being told', () => {
    expect(readdirSync(files).sort()).toEqual(['rear.dxf', 'rear.svg']);
    writeFileSync(svg, 'mine');
    const again = hushwright(['vent', SCANNER, ...where, '--keep', '80 %', '--svg', svg]);
    expect(again.code).toBe(2);
    expect(again.out).toBe('');
    expect(readFileSync(svg, 'utf8')).toBe('mine');
    const forced = hushwright(['vent', SCANNER, ...where, '--keep', '80 %', '--svg', svg, '--force', '-q']);
    expect([forced.code, forced.err]).toEqual([0, '']);
    expect(measuredSvg(readFileSync(svg, 'utf8')).outlines).toBe(best?.holes);
  });

  it('gives a pattern through which the program computes the same flow and bands once it is in the scenario', () => {
    const text = scenarioText('desk-scanner')
      .replace(/ {2}rear: \{ perforated.*\n/, `  ${best?.scenarioLine}\n`)
      .replace(/ {2}rear: \{ hole.*\n/, '')
      .replace(', rear: 5 mm', '');
    const solved = hushwright([
      'solve',
      written('box.yaml', text),
      '--json',
      '--build',
      'as-built',
      '--speed',
      '60',
    ]);
    const { outcome, bands } = solveForm.parse(JSON.parse(solved.out)).result;
    const { duties } = outcome;
    const leg = duties.find(({ duty }) => duty === 'scanning')?.legs.find((each) => each.leg === 'exhaust');
    // The leg tells its flow at its inlet; the fan in it warms its air by less than a tenth of a kelvin.
    expect((best?.flow_m3_s ?? 0) / (leg?.flow_m3_s ?? 1)).toBeCloseTo(1, 3);
    const told = bands.duties.find(({ duty }) => duty === 'scanning');
    const { sure } = result;
    const legBand = told?.legs.find((each) => each.leg === 'exhaust')?.flow_m3_s;
    const margin = told?.limits.find(({ part }) => part === sure.pattern.subject)?.margin_K;
    for (const end of ['low', 'expected', 'high'] as const) {
      expect(sure.pattern.level_dBA[end]).toBeCloseTo(told?.level_dBA[end] ?? Number.NaN, 3);
      expect(sure.pattern.flow_m3_s[end] / (legBand?.[end] ?? 1)).toBeCloseTo(1, 3);
      expect(sure.pattern.margin_K[end]).toBeCloseTo(margin?.[end] ?? Number.NaN, 3);
    }
    expect(sure.pattern.holding).toBeCloseTo(told?.holding ?? Number.NaN, 6);
  });
});

describe('vent', () => {
  it('shows areas, patterns and two plots, no line wider than a narrow terminal, and exits 1 if no pattern does', () => {
    const run = hushwright(['vent', SCANNER, '--opening', 'rear', '--keep', '99.5 %', ...BUILD]);
    expect(run.code).toBe(1);
    for (const part of [
      'Least free area',
      'Knee:',
      'No pattern in this field',
      'free area, cm²',
      'K knee',
      'rear: { perforated:',
    ])
      expect(run.out).toContain(part);
  });

  it('gives the curve as comma-separated values', () => {
    const run = hushwright(['vent', SCANNER, '--opening', 'rear', '--keep', '80 %', '--csv', ...BUILD]);
    expect(run.code).toBe(0);
    const [head = '', ...rows] = run.out.trimEnd().split('\r\n');
    expect(head.split(',')[0]).toBe('area [m2]');
    expect(rows.length).toBeGreaterThan(20);
    for (const row of rows) expect(row.split(',')).toHaveLength(head.split(',').length);
  });

  it.each([
    ['an opening that is misspelt', ['--opening', 'raer'], 'did you mean "rear"'],
    ['an opening that is no sheet', ['--opening', 'side-gap'], '--field and --sheet'],
    ['a share above all', ['--opening', 'rear', '--keep', '120 %'], '--keep'],
    ['a field that is no rectangle', ['--opening', 'rear', '--field', 'wide'], '--field'],
    ['a process nobody has', ['--opening', 'rear', '--process', 'saw'], 'drill'],
  ])('refuses %s', (_, args, words) => {
    const run = hushwright(['vent', SCANNER, ...BUILD, ...args]);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.err).toContain(words);
  });
});
