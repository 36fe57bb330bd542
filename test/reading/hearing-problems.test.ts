import { describe, expect, it } from 'vitest';
import { bare, place, scenario } from './good-scenario.ts';
import { changed } from './marked.ts';
import { SCENARIO } from './samples.ts';
import { describeProblems, text } from './scenario-cases.ts';

const REAR = 'rear: { perforated: 160 x 80 mm';

describe('who listens, and where', () => {
  it('is read with the room and the place of the box', () => {
    const written = 'listener: { distance: 1 m, background: 25 dB(A), place: edge, absorption: 10 m² }';
    const { enclosure } = scenario(
      changed(SCENARIO, 'listener: { distance: 1 m, background: 25 dB(A) }', written),
    );
    expect(enclosure.listener).toEqual({ distance: 1, background: 25, stand: 'edge', absorption: 10 });
    expect(scenario(SCENARIO).enclosure.listener).toEqual({ distance: 1, background: 25 });
  });

  it('may differ by source: banks and openings', () => {
    const near = changed(SCENARIO, REAR, `${REAR}, distance: 80 cm, directivity: -3 dB`);
    const both = changed(near, 'exit: { bank: fans', 'exit: { bank: fans, directivity: 2 dB');
    const { enclosure } = scenario(both);
    expect(place(enclosure, 'rear')?.heard).toEqual({ distance: 0.8, directivity: -3 });
    expect(place(enclosure, 'exit')?.heard).toEqual({ directivity: 2 });
    expect(place(enclosure, 'front')?.heard).toBeUndefined();
  });

  it('holds for every choice of a place', () => {
    const { enclosure } = scenario(changed(bare, REAR, `${REAR}, distance: 80 cm`));
    expect(place(enclosure, 'rear')?.options).toHaveLength(3);
    expect(place(enclosure, 'rear')?.heard).toEqual({ distance: 0.8 });
  });
});

describeProblems('problems of who listens, and where', [
  [
    'a place that is none',
    'background: 25 dB(A)',
    'place: ¦cornr',
    { code: 'wrong-value', suggestion: 'corner', expected: text('free, plane, edge') },
  ],
  ['a room that swallows nothing', 'background: 25 dB(A)', 'absorption: ¦0 m²', { code: 'out-of-range' }],
  [
    'no distance of a bank',
    'exit: { bank: fans',
    'exit: { bank: fans, distance: ¦0 m',
    { code: 'out-of-range' },
  ],
  ['no distance of an opening', REAR, `${REAR}, distance: ¦0 m`, { code: 'out-of-range' }],
  [
    'a level for a directivity',
    REAR,
    `${REAR}, directivity: ¦3 dB(A)`,
    { code: 'wrong-value', suggestion: '3 dB' },
  ],
  ['too much directivity', REAR, `${REAR}, directivity: ¦30 dB`, { code: 'out-of-range' }],
  [
    'a misspelt key of a place',
    REAR,
    `${REAR}, ¦distence: 1 m`,
    { code: 'misspelt-key', suggestion: 'distance' },
  ],
  [
    'a distance of fins, which make no noise',
    'stack: { fins: tower',
    'stack: { fins: tower, ¦distance: 1 m',
    { code: 'conflict', message: text('no noise of its own') },
  ],
]);
