import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');

/** Content of a file, by its path from the top of the repository. */
export function textOf(path: string): string {
  return readFileSync(resolve(root, path), 'utf8');
}

/** Contents of the fenced blocks of a language, in order. */
export function blocksOf(document: string, language: string): readonly string[] {
  const fence = new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\`$`, 'gm');
  return [...document.matchAll(fence)].map(([, content = '']) => content);
}

/** The fenced block of a language that holds a text; there must be one. */
export function blockWith(document: string, language: string, text: string): string {
  const found = blocksOf(document, language).find((block) => block.includes(text));
  if (found === undefined) throw new Error(`no ${language} block holds ${text}`);
  return found;
}

/** A section from its heading to the next one of the same or a higher rank. */
export function sectionOf(document: string, heading: string): string {
  const lines = document.split('\n');
  const start = lines.findIndex((line) => /^#+ /.test(line) && line.replace(/^#+ /, '') === heading);
  if (start < 0) throw new Error(`there is no section ${heading}`);
  const rank = /^#+/.exec(lines[start] ?? '')?.[0].length ?? 1;
  const end = lines.findIndex(
    (line, at) => at > start && /^#+ /.test(line) && (/^#+/.exec(line)?.[0].length ?? 0) <= rank,
  );
  return lines.slice(start, end < 0 ? undefined : end).join('\n');
}

/** What stands in backticks in running text, fenced blocks left out. */
export function codeIn(text: string): readonly string[] {
  const prose = text.replace(/^```[\s\S]*?^```$/gm, '');
  return [...prose.matchAll(/`([^`\n]+)`/g)].map(([, code = '']) => code);
}

/** Cells of the rows of all tables in a text, heads included and rulers left out. */
export function rowsOf(text: string): readonly (readonly string[])[] {
  const rows = text.split('\n').filter((line) => line.startsWith('| ') && line.endsWith(' |'));
  return rows.map((line) =>
    line
      .slice(2, -2)
      .split(' | ')
      .map((cell) => cell.trim()),
  );
}

/** Links of a text that lead into the repository. */
export function linksIn(text: string): readonly string[] {
  const targets = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = '']) => target);
  return targets.filter((target) => !/^[a-z]+:/.test(target));
}

/** Anchors of the headings of a document. */
export function anchorsOf(document: string): readonly string[] {
  const headings = [...document.matchAll(/^#+ (.*)$/gm)].map(([, text = '']) => text);
  return headings.map((text) =>
    text
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s-]/gu, '')
      .trim()
      .replace(/\s/g, '-'),
  );
}
