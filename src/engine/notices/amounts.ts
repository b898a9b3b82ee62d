import { noteName } from '../exercise/index.ts';
import type { NoteNaming } from '../exercise/index.ts';

/** 12.34 → "12.3", −7 → "−7": a figure as it is written, with the sign of music and the decimal mark of the language. */
export function amount(value: number, decimals = 0, mark = '.'): string {
  const text = value.toFixed(decimals);
  return (Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−')).replace('.', mark);
}

/** "Bb4" → "B♭4", or as the page calls its notes. */
export const noteIn =
  (naming: NoteNaming) =>
  (name: string): string =>
    noteName(name, naming) + (/-?\d+$/.exec(name)?.[0] ?? '');
