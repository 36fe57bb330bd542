import { describe, expect, it } from 'vitest';
import { parse, parseDocument } from 'yaml';
import { buildWords, savedBuild } from '../../../src/reading/round-trip/saved-build.ts';
import { readScenario } from '../../../src/reading/scenario-file.ts';
import { scenarioFiles, shippedFans, shippedStock } from '../../scenarios/shipped.ts';
import { seededBelow } from '../random-document.ts';

const catalog = { fans: shippedFans, stock: shippedStock };
const desk = scenarioFiles.find(({ file }) => file === 'desk-scanner.yaml')?.text ?? '';
const cabinet = scenarioFiles.find(({ file }) => file === 'wall-cabinet.yaml')?.text ?? '';

function intoOf(text: string) {
  const read = readScenario('box.yaml', text, shippedFans, shippedStock);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('; '));
  return { file: 'box.yaml', text, enclosure: read.enclosure, catalog };
}

/** A build of the last options of all places. */
function lastBuild(text: string): readonly number[] {
  return intoOf(text).enclosure.places.map(({ options }) => options.length - 1);
}

function saved(text: string, name = 'mine'): string {
  const result = savedBuild(intoOf(text), lastBuild(text), name);
  if (!result.ok) throw new Error(result.reason);
  return result.text;
}

/** Lines of a text that are not in another, in order: what was put in. */
function added(before: string, after: string): readonly string[] {
  const old = before.split(/\r\n|\n|\r/);
  const now = after.split(/\r\n|\n|\r/);
  return now.filter((line) => !old.includes(line));
}

/** The text is still all there, in order: nothing but insertions. */
function isInsertion(before: string, after: string): boolean {
  let start = 0;
  while (start < before.length && before[start] === after[start]) start++;
  return after.endsWith(before.slice(start));
}

const BUILDS = /\nbuilds:\n[\s\S]*$/;
const TITLE_OUT = desk.replace(BUILDS, '\n');

describe('a build that is put into its scenario', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['a section that is there', desk],
    ['no section yet', TITLE_OUT],
    ['no line break at the end', TITLE_OUT.trimEnd()],
    ['a comment at the end', `${desk}# the end\n`],
    ['a comment behind the last build', desk.replace(/rear: 5 mm }\n$/, 'rear: 5 mm } # as it stands\n')],
    [
      'builds over several lines',
      desk.replace(
        /\n {2}as-built: \{.*\}\n$/,
        '\n    as-built:\n      push: s92-15-b x1\n      pull: empty # none\n      exit: f80-25-b x2\n\n      rear: 5 mm\n\n# end\n',
      ),
    ],
    ['builds between braces', desk.replace(/builds:\n {2}(as-built: .*)\n$/, 'builds: { $1 } # mine\n')],
    [
      'builds between braces with a comma at the end',
      desk.replace(/builds:\n {2}(as-built: .*)\n$/, 'builds: {\n  $1, # mine\n  }\n'),
    ],
    ['no builds between braces', desk.replace(/builds:\n.*\n$/, 'builds: {}\n')],
    [
      'builds in the middle',
      `${desk.replace(/\nbuilds:\n.*\n$/, '\n')}`.replace(
        'choices:',
        'builds:\n  first: { push: empty, pull: empty, exit: f80-25-b x2, rear: 5 mm }\n\nchoices:',
      ),
    ],
    ['Windows line ends', desk.replaceAll('\n', '\r\n')],
    ['a byte order mark', `\uFEFF${desk}`],
    ['marks of a document', `---\n${desk}...\n`],
    ['several fields in one option', cabinet],
    ['JSON, which is YAML too', JSON.stringify(parse(desk), null, 2)],
    ['JSON without builds, on one line', JSON.stringify(parse(TITLE_OUT))],
    [
      'a last value of several lines',
      desk.replace(
        / {2}as-built: .*\n$/,
        '  as-built:\n    push: empty\n    pull: empty\n    exit: f80-25-b x2\n    rear: >-\n      5\n      mm\n',
      ),
    ],
    ['a last value in quotation marks', desk.replace('rear: 5 mm }', "rear: 'hole 5 mm' }")],
  ];

  // The other side is the package yaml: it reads the text before and after without the project's reader.
  it.each(cases)('goes in where there is %s', (_, text) => {
    const after = saved(text);
    expect(isInsertion(text, after), after).toBe(true);
    expect(after.length).toBeGreaterThan(text.length);
    const [before, now] = [text, after].map(
      (each) => parse(each.replace(/^\uFEFF/, '')) as Record<string, object>,
    );
    const words = buildWords(intoOf(text).enclosure, lastBuild(text));
    expect(now).toEqual({ ...before, builds: { ...before?.['builds'], mine: words } });
    expect(added(text, after).length).toBeLessThan(5);
    const read = intoOf(after).enclosure.builds.find(({ id }) => id === 'mine');
    expect(read?.options).toEqual(lastBuild(text));
    // Line ends stay what they were.
    if (text.includes('\r\n')) expect(after.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('goes in again and again, and comes out as it went in', () => {
    const below = seededBelow(20_261_125);
    let text = desk;
    const builds: (readonly [string, readonly number[]])[] = [];
    for (const name of ['one', 'two words', 'three: odd # {x}', "four's", '5', 'ö 🙂', 'true']) {
      const into = intoOf(text);
      const build = into.enclosure.places.map(({ options }) => below(options.length));
      const result = savedBuild(into, build, name);
      if (!result.ok) throw new Error(result.reason);
      text = result.text;
      builds.push([name, build]);
    }
    const { enclosure } = intoOf(text);
    for (const [name, build] of builds)
      expect(enclosure.builds.find(({ id }) => id === name)?.options).toEqual(build);
    const comments = (each: string) =>
      parseDocument(each)
        .toString()
        .match(/^\s*#.*/gm);
    expect(comments(text)).toEqual(comments(desk));
  });

  it.each([
    ['as-built', 'there is a build "as-built" already'],
    ['', '"" cannot be the name of a build'],
    ['__proto__', '"__proto__" cannot be the name of a build'],
    ['two\nlines', '"two\nlines" cannot be the name of a build'],
  ])('is refused as %j', (name, reason) => {
    expect(savedBuild(intoOf(desk), lastBuild(desk), name)).toEqual({ ok: false, reason });
  });
});
