import { describe, expect, it } from 'vitest';
import { documented, exportedFunctions, lawless, unsaid } from './contracts.ts';
import { filesBelow } from './source-text.ts';

const files = documented
  .flatMap((room) => filesBelow(`src/${room}`))
  .map(({ path, text }) => ({ path: path.slice('src/'.length), text }));

const full = `
import type { Pascals } from '../quantities/dimensions.ts';
/**
 * Pressure of a jet [Pa].
 *
 * Source: derived.
 *
 * @param velocity of the air [m/s], ≥ 0
 * @param density of the air
 * [kg/m³], > 0
 */
export function jetPressure(velocity: number, density: number): Pascals {
  return (density * velocity ** 2) / 2;
}`;

function faultsAfter(change: (text: string) => string): readonly string[] {
  return unsaid({ path: 'air/jet.ts', text: change(full) }).map((fault) => fault.replace('air/jet.ts ', ''));
}

describe('an exported function of the physics', () => {
  it.each(files.map((file) => [file.path, file] as const))(
    'of %s says what it needs and gives',
    (_, file) => {
      expect(unsaid(file)).toEqual([]);
    },
  );
});

describe('the check of doc comments', () => {
  it('sees most of the functions there are, and each that is excused', () => {
    const seen = files.flatMap(exportedFunctions);
    expect(seen.length).toBeGreaterThan(150);
    expect(lawless.filter((name) => !seen.includes(name))).toEqual([]);
  });

  it('is content with one that says everything', () => {
    expect(faultsAfter((text) => text)).toEqual([]);
  });

  it.each<[string, (text: string) => string, string]>([
    ['no comment', (text) => text.replace('/**', '/*'), 'has no doc comment'],
    ['a comment elsewhere', (text) => text.replace('*/', '*/\nconst HALF = 0.5;'), 'has no doc comment'],
    [
      'a silent parameter',
      (text) => text.replace(/ \* @param v.*\n/, ''),
      'says nothing of parameter velocity',
    ],
    ['no unit', (text) => text.replace('[m/s]', ''), 'gives no unit of parameter velocity'],
    ['no unit on a second line', (text) => text.replace('[kg/m³]', ''), 'gives no unit of parameter density'],
    ['no unit of the result', (text) => text.replace('[Pa]', ''), 'gives no unit of its result'],
    ['no source', (text) => text.replace('Source:', 'From:'), 'names no source'],
    ['an empty source', (text) => text.replace('Source: derived.', 'Source:'), 'names no source'],
    ['no purpose', (text) => text.replace(/ \* Pressure[^@]*/, ' * '), 'does not say what it is for'],
    [
      'a parameter of old',
      (text) => text.replace(' */', ' * @param area [m²]\n */'),
      'speaks of a parameter area that it does not have',
    ],
  ])('sees %s', (_, change, fault) => {
    expect(faultsAfter(change)).toContain(`jetPressure ${fault}`);
  });

  it.each([
    ['a list', 'readonly number[]'],
    ['a typed array', 'Float64Array'],
    ['a quantity', 'Pascals'],
    ['perhaps a number', 'number | undefined'],
    ['something like a list', 'ArrayLike<number>'],
  ])('takes %s for a number', (_, type) => {
    const changed = faultsAfter((text) =>
      text.replace('velocity: number', `velocity: ${type}`).replace('[m/s]', ''),
    );
    expect(changed).toEqual(['jetPressure gives no unit of parameter velocity']);
  });

  it('asks no unit of what is no number', () => {
    expect(
      faultsAfter((text) => text.replace('velocity: number', 'velocity: Jet').replace('[m/s]', '')),
    ).toEqual([]);
  });

  it('sees functions that are constants', () => {
    const text = 'export const twice = (pressure: number): number => 2 * pressure;';
    expect(unsaid({ path: 'numerics/twice.ts', text })).toEqual([
      'numerics/twice.ts twice has no doc comment',
    ]);
  });

  it('sees exports apart from their comments', () => {
    const text = 'function twice(pressure: number): number { return 2 * pressure; }\nexport { twice };';
    const fault = 'numerics/twice.ts exports by a list, apart from its comments';
    expect(unsaid({ path: 'numerics/twice.ts', text })).toEqual([fault]);
  });

  it('lets a comment name what the signature takes apart', () => {
    const text =
      '/** Sum [Pa].\n * @param losses of both parts */\nexport function sum({ a, b }: Losses): number { return a + b; }';
    expect(unsaid({ path: 'numerics/sum.ts', text })).toEqual([]);
    expect(unsaid({ path: 'numerics/sum.ts', text: text.replace('@param', 'Takes') })).toEqual([
      'numerics/sum.ts sum says nothing of parameter number 1',
    ]);
  });

  it('asks a source only where there is physics', () => {
    const text = full.replace('Source:', 'From:');
    expect(unsaid({ path: 'numerics/jet.ts', text })).toEqual([]);
    expect(unsaid({ path: 'sound/jet.ts', text })).toEqual(['sound/jet.ts jetPressure names no source']);
  });
});
