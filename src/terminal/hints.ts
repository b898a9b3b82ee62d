/** The accepted word that is most like `word`; null where none is near: at most a third of its letters differ. */
export function nearest(word: string, accepted: readonly string[]): string | null {
  let best: { readonly candidate: string; readonly distance: number } | null = null;
  for (const candidate of accepted) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (best === null || distance < best.distance) best = { candidate, distance };
  }
  return best !== null && best.distance <= Math.max(1, Math.floor(best.candidate.length / 3))
    ? best.candidate
    : null;
}

/** Letters to put in, take out or change, or neighbours to swap (optimal string alignment: Damerau 1964). */
export function editDistance(a: string, b: string): number {
  const rows = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = a[i - 1] === b[j - 1] ? 0 : 1;
      row.push(Math.min(rows[i - 1]![j]! + 1, row[j - 1]! + 1, rows[i - 1]![j - 1]! + changed));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        row[j] = Math.min(row[j]!, rows[i - 2]![j - 2]! + 1);
      }
    }
    rows.push(row);
  }
  return rows[a.length]![b.length]!;
}
