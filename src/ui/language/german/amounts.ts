const COUNTS = ['kein', 'ein', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben', 'acht', 'neun', 'zehn'];

/** Up to ten in words, none as "kein". */
export const inWords = (count: number): string => COUNTS[count] ?? String(count);

export const attempts = (count: number): string =>
  `${count.toLocaleString('de-DE')} ${count === 1 ? 'Versuch' : 'Versuche'}`;
