/** A row of a table whose first cell is the name of a package: | `zod` | forms of what is read | */
const row = /^\|\s*`((?:@[\w.-]+\/)?[\w.-]+)`\s*\|\s*(\S.*?)\s*\|\s*$/;

/** Packages that a document explains, in the rows of the tables under its heading on dependencies. */
export function explained(document: string): readonly string[] {
  const sections = document.split(/^(?=#{1,6} )/m);
  const section = sections.filter((text) => /^#+ .*\bdependencies\b/i.test(text)).join('\n');
  return section.split('\n').flatMap((line) => row.exec(line)?.[1] ?? []);
}
