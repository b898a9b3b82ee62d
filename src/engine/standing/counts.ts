const COUNTS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** 3 → "three"; figures from thirteen on. */
export function inWords(count: number): string {
  return COUNTS[count] ?? String(count);
}
