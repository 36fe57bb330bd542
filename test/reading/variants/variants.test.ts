import { describe, expect, it } from 'vitest';
import { readCatalogs } from '../../../src/reading/catalog-file.ts';
import { findPath } from '../../../src/reading/variants/dotted-path.ts';
import { readVariant, writtenTree } from '../../../src/reading/variants/scenario-source.ts';
import { withSettings } from '../../../src/reading/variants/settings.ts';
import { changed, FANS, TWO_FANS } from '../../scenarios/two-fans.ts';

const catalog = readCatalogs([{ file: 'fans.yaml', text: FANS }]);
const source = { file: 'box.yaml', text: TWO_FANS, fans: catalog.ok ? catalog.fans : [] };

describe('a value written differently', () => {
  it('is read as if it stood in the file', () => {
    // The other way: the text itself with the value changed.
    const text = changed(TWO_FANS, {
      'distance: 0.7 m': 'distance: 2 m',
      'inlet-gap: 10 mm': 'inlet-gap: 4 mm',
    });
    const written = readVariant({ ...source, text }, []);
    const set = readVariant(source, [
      { path: ['listener', 'distance'], value: '2 m' },
      { path: ['elements', 'pair', 'inlet-gap'], value: '4 mm' },
    ]);
    if (!written.ok || !set.ok) throw new Error('both can be read');
    expect(JSON.stringify(set.enclosure)).toBe(JSON.stringify(written.enclosure));
  });

  it('is checked as if it stood there, and the path is told', () => {
    const set = readVariant(source, [{ path: ['elements', 'pair', 'depth'], value: '25 m³/h' }]);
    if (set.ok) throw new Error('a flow is no depth');
    expect(set.problems).toMatchObject([{ path: ['elements', 'pair', 'depth'], found: '25 m³/h, a flow' }]);
  });

  it('leaves what was read as it was', () => {
    const tree = { a: [{ b: 1 }, { b: 2 }], c: { d: 3 } };
    const before = JSON.stringify(tree);
    expect(withSettings(tree, [{ path: ['a', 1, 'b'], value: 5 }])).toEqual({
      a: [{ b: 1 }, { b: 5 }],
      c: { d: 3 },
    });
    expect(withSettings(tree, [{ path: ['c', 'd'], value: undefined }])).toEqual({ a: tree.a, c: {} });
    expect(withSettings(tree, [{ path: ['e', 'f'], value: 1 }])).toMatchObject({ e: { f: 1 } });
    expect(JSON.stringify(tree)).toBe(before);
  });
});

describe('a path with points', () => {
  const tree = writtenTree(source);
  const sections = ['site', 'elements', 'margin', 'assume', 'duties'];
  it.each([
    ['elements.vent.K', ['elements', 'vent', 'K']],
    ['airway.legs.in.recirculation', ['airway', 'legs', 0, 'recirculation']],
    ['airway.legs.1.rise', ['airway', 'legs', 1, 'rise']],
    ['heat.lamp.power', ['heat', 0, 'power']],
    ['margin', ['margin']],
    ['assume.fan.derating-direct', ['assume', 'fan', 'derating-direct']],
    ['assume.sound.stall.rise', ['assume', 'sound', 'stall', 'rise']],
  ])('%s is found, written or with a default', (dotted, path) => {
    expect(findPath(tree, dotted, sections)).toEqual({ ok: true, path });
  });

  it('may go by names with points and spaces', () => {
    const named = { duties: [{ duty: 'hot day 1.5', heat: '50 %' }] };
    expect(findPath(named, 'duties.hot day 1.5.heat', sections)).toEqual({
      ok: true,
      path: ['duties', 0, 'heat'],
    });
  });

  it.each([
    ['elements.vnet.K', 'there is no "vnet" under elements, did you mean "vent"?'],
    ['elemnts.vent.K', 'there is no "elemnts" in the scenario, did you mean "elements"?'],
    ['heat.lmp.power', 'there is no "lmp" under heat, did you mean "lamp"?'],
  ])('%s is told with what was probably meant', (dotted, message) => {
    expect(findPath(tree, dotted, sections)).toEqual({ ok: false, message });
  });
});
