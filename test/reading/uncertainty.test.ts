import { describe, expect, it } from 'vitest';
import { UNCERTAINTIES } from '../../src/enclosure/uncertainties.ts';
import { scenario } from './good-scenario.ts';
import { unmarked } from './marked.ts';
import { SCENARIO } from './samples.ts';
import { problemsOf } from './scenario-cases.ts';

const stating = (section: string): string => `${SCENARIO}\n${section}\n`;
const read = (section: string) => scenario(stating(section)).enclosure.uncertainties;

// What the README says of the section.
describe('the section uncertainty', () => {
  it('may be absent', () => {
    expect(scenario(SCENARIO).enclosure.uncertainties).toBeUndefined();
  });

  it('takes the place of the defaults where it says something', () => {
    expect(read('uncertainty: { room: 0.5 K, slow-fan: 0 %, fan-power: 5 % }')).toEqual({
      ...UNCERTAINTIES,
      room: 0.5,
      slowFan: 0,
      fanPower: 0.05,
    });
  });

  it('takes one figure for all', () => {
    const found = read('uncertainty: { heat: 4 %, fins: 20 %, loss: 12 %, curve: 6 %, rating: 1.5 dB }');
    expect(found?.heat).toEqual({ usual: 0.04, of: {} });
    expect([found?.fins.usual, found?.finsBehindFan]).toEqual([0.2, 0.2]);
    expect(found?.loss).toEqual({ usual: 0.12, of: {} });
    expect(found?.curve).toEqual({ measured: 0.06, datasheet: 0.06, box: 0.06, of: {} });
    expect(found?.rating).toEqual({ usual: 1.5, of: {} });
  });

  it('takes figures by name beside the defaults', () => {
    const found = read(`uncertainty:
  heat: { processor: 3 % }
  loss: { front: 10 % }
  curve: { datasheet: 8 %, s92-15-a: 2 % }`);
    expect(found?.heat).toEqual({ usual: UNCERTAINTIES.heat.usual, of: { processor: 0.03 } });
    expect(found?.loss).toEqual({ of: { front: 0.1 } });
    expect(found?.curve).toEqual({ measured: 0.03, datasheet: 0.08, of: { 's92-15-a': 0.02 } });
  });

  it.each([
    ['a part that is not there', 'uncertainty: { heat: { ¦procesor: 5 % } }', 'unknown-name', 'processor'],
    ['an element that is not there', 'uncertainty: { loss: { ¦frnt: 5 % } }', 'unknown-name', 'front'],
    ['a fan that is not there', 'uncertainty: { curve: { ¦s92-15-aa: 5 % } }', 'unknown-name', 's92-15-a'],
    ['a key that is not there', 'uncertainty: { ¦rom: 1 K }', 'misspelt-key', 'room'],
    ['a number without a unit', 'uncertainty: { heat: ¦10 }', 'wrong-value', '10 %'],
    ['a share out of all proportion', 'uncertainty: { heat: ¦400 % }', 'out-of-range', undefined],
    ['kelvins that are negative', 'uncertainty: { room: ¦-1 K }', 'out-of-range', undefined],
  ])('refuses %s where it stands', (_, section, code, suggestion) => {
    const { text, places } = unmarked(stating(section));
    const problems = problemsOf(text);
    expect(problems.map((problem) => [problem.line, problem.column])).toEqual(places);
    expect(problems[0]?.code).toBe(code);
    expect(problems[0]?.suggestion).toBe(suggestion);
  });
});
