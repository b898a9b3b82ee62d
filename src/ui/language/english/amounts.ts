const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** Up to ten in words, none as "no". */
export const inWords = (count: number): string => COUNTS[count] ?? String(count);

export const attempts = (count: number): string =>
  `${count.toLocaleString('en-GB')} ${count === 1 ? 'attempt' : 'attempts'}`;
