import type { Guess } from './judge.ts';

/** a guess that may be playing, although somebody talks (our bench, development piano) */
const SURE = { chance: 0.98, sounding: 0.9 } as const;
/** two of them within so many seconds and semitones are playing, as far as a guess can tell */
const PLAYING = { sec: 0.6, semitones: 24 } as const;
/** the same key within this is the same note, seconds */
const SAME_SEC = 0.09;

/** Guesses beside a voice, while nobody plays: one alone, however sure, may be a syllable; the second soon after is drawn. */
export class BesideVoice {
  #sure: readonly Guess['note'][] = [];

  /** A note guessed more than once is one note. */
  isPlaying({ note, chance }: Guess): boolean {
    if (chance <= SURE.chance || note.sounding <= SURE.sounding) return false;
    this.#sure = this.#sure.filter(({ timeSec }) => note.timeSec - timeSec < PLAYING.sec);
    const others = this.#sure.filter(
      ({ midi, timeSec }) => midi !== note.midi || Math.abs(timeSec - note.timeSec) >= SAME_SEC,
    );
    if (others.length === this.#sure.length) this.#sure = [...this.#sure, note];
    return others.some(({ midi }) => Math.abs(midi - note.midi) <= PLAYING.semitones);
  }
}
