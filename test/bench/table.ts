/**
 * Prints a table: columns as wide as their widest cell, the first to the left, the others to the right.
 *
 * @param head names of the columns
 * @param rows as many cells each
 */
export function printTable(head: readonly string[], rows: readonly (readonly string[])[]): void {
  const lines = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...lines.map((line) => line[column]?.length ?? 0)));
  for (const line of lines) {
    const cells = widths.map((width, column) => {
      const cell = line[column] ?? '';
      return column === 0 ? cell.padEnd(width) : cell.padStart(width);
    });
    console.log(`  ${cells.join('  ').trimEnd()}`);
  }
}
