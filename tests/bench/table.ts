/** Rows → a plain text table, first column left, the rest right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => (row[column] ?? '').length)));
  const line = (row: readonly string[]): string =>
    widths
      .map((width, column) =>
        column === 0 ? (row[0] ?? '').padEnd(width) : (row[column] ?? '').padStart(width),
      )
      .join('  ');
  return [line(head), widths.map((width) => '-'.repeat(width)).join('  '), ...rows.map(line)].join('\n');
}

export const fixed = (value: number | undefined, digits: number): string =>
  value === undefined || Number.isNaN(value) ? '–' : value.toFixed(digits);
