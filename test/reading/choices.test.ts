import { describe, expect, it } from 'vitest';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { bare, optionsOf, place, scenario } from './good-scenario.ts';
import { changed } from './marked.ts';
import { SCENARIO } from './samples.ts';
import { fans } from './scenario-cases.ts';

describe('choices', () => {
  it('combine all listed values of all fields', () => {
    const text = changed(bare, 'hole: [4 mm, 5 mm, 6 mm]', 'hole: [4 mm, 5 mm], web: [2 mm, 3 mm]');
    const { enclosure } = scenario(text);
    expect(optionsOf(enclosure, 'rear')).toEqual([
      'hole 4 mm, web 2 mm',
      'hole 4 mm, web 3 mm',
      'hole 5 mm, web 2 mm',
      'hole 5 mm, web 3 mm',
    ]);
    const rear = place(enclosure, 'rear');
    const areas = rear?.kind === 'element' ? rear.options.map(({ element }) => element.freeArea ?? 0) : [];
    // Derived: more web, less free area; more hole at equal web, more.
    expect(areas[0]).toBeGreaterThan(areas[1] ?? 0);
    expect(areas[2]).toBeGreaterThan(areas[0] ?? 0);
  });

  it('may list whole elements with names', () => {
    const text = changed(
      bare,
      'rear: { hole: [4 mm, 5 mm, 6 mm] }',
      'rear: { element: [{ name: open, slot: 150 x 70 mm }, { guard: 80 x 80 mm, open: 70 % }] }',
    );
    const built = `${text}builds:\n  one: { push: empty, pull: empty, exit: f80-25-b, rear: open }\n`;
    const { enclosure } = scenario(built);
    expect(optionsOf(enclosure, 'rear')).toEqual(['open', 'guard 80 x 80 mm']);
    expect(enclosure.builds[0]?.options).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);
  });

  it.each([
    ['1', ['f80-25-b x1']],
    ['1 to 3', ['f80-25-b x1', 'f80-25-b x2', 'f80-25-b x3']],
    ['[3, 1, 3]', ['f80-25-b x1', 'f80-25-b x3']],
  ])('of a bank may hold %s fans', (count, options) => {
    expect(optionsOf(scenario(changed(bare, 'count: 1 to 2', `count: ${count}`)).enclosure, 'exit')).toEqual(
      options,
    );
  });

  it.each(['s92-15-a x1', 's92-15-a', 's92-15-a  × 1'])(
    'of a fan may be written "%s" in a build',
    (words) => {
      const text = changed(SCENARIO, 'push: s92-15-a x1', `push: ${words}`);
      expect(scenario(text).enclosure.builds[0]?.options[4]).toBe(1);
    },
  );

  it.each(['5 mm', '5mm', 'hole 5 mm'])('of a single field may be written "%s" in a build', (words) => {
    const text = changed(SCENARIO, 'rear: 5 mm', `rear: ${words}`);
    expect(scenario(text).enclosure.builds[0]?.options[7]).toBe(1);
  });

  it('take a frame that differs by a millimetre, and no more', () => {
    expect(
      optionsOf(
        scenario(changed(bare, 'exit: { bank: fans, face: 80 mm', 'exit: { bank: fans, face: 81 mm'))
          .enclosure,
        'exit',
      ),
    ).toHaveLength(2);
    expect(
      readScenario(
        'f',
        changed(bare, 'exit: { bank: fans, face: 80 mm', 'exit: { bank: fans, face: 81.1 mm'),
        fans,
      ).ok,
    ).toBe(false);
  });
});
