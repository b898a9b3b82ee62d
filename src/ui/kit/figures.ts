import { writing } from './writing.svelte.ts';

/** Figures as they are shown: rounded to what they are worth, with a true minus sign and their unit. */

/** No-break thin space between a figure and its unit. */
const GAP = '\u202f';

/** −12.34, 1 → "−12.3", or "−12,3" where the language writes so. */
export function shown(value: number, decimals = 0): string {
  const text = Math.abs(value).toFixed(decimals);
  const sign = Number(text) !== 0 && value < 0 ? '−' : '';
  return sign + text.replace('.', writing.decimalSign);
}

/** Like `shown`, with its sign always written: "+92", "−6", "0". */
export function signed(value: number, decimals = 0): string {
  const text = shown(value, decimals);
  return Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
}

/** A figure and its unit, kept on one line. */
export function withUnit(figure: string, unit: string): string {
  return figure + GAP + unit;
}

/** Seconds → "0:07", "1:42". */
export function clock(sec: number): string {
  const whole = Math.max(0, Math.floor(sec));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** ["A", "B", "C"] → "A, B and C", with the language's word. */
export function listed(words: readonly string[]): string {
  return words.length < 2
    ? words.join('')
    : `${words.slice(0, -1).join(', ')} ${writing.and} ${words.at(-1)}`;
}

/** 1, "note", "notes" → "1 note" */
export function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}
