import type { Heard } from '../types.ts';

/**
 * From so many cut peaks a note on, levels are not what was played. Ten attempts of the development piano (scales, an arpeggio, chords,
 * both hands) at each of seven gains: up to 18 a note, which is 6 dB over full scale, a level erred by half a dB at most, and the
 * variation of loudness was told right; from 21 on by 0.5 to 3 dB, and it came out up to two thirds too small.
 */
const CUT_PEAKS = 20;

/** Whether the sound is cut off so often that the levels of its notes are bent: the loud ones come out softer than they were. */
export function levelsAreCut({ findings, notes }: Pick<Heard, 'findings' | 'notes'>): boolean {
  const cut = findings.flatMap(({ notice }) => (notice?.notice === 'clipping' ? [notice.times] : []));
  return Math.max(0, ...cut) > CUT_PEAKS * notes.length;
}
