import { RATE_HZ } from '../listen/audio/index.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import { chanceAmong } from '../listen/transcribe/settle.ts';
import type { Judged } from '../listen/transcribe/settle.ts';

/** a note is judged by those of so many seconds before it, and of its own moment */
const AROUND_SEC = 3;

/**
 * What the network believes → what is told, each note judged among those before it and with it, as `settle` does with a whole
 * recording. What comes after is not waited for.
 */
export class Judge {
  #before: readonly Judged[] = [];

  /** Those of `notes` that were more likely struck than not; they change nothing for later ones. */
  likely(notes: readonly NetworkNote[], leastChance: number): NetworkNote[] {
    const moment = notes.map(judgedOf);
    const around = [...this.#before, ...moment];
    return notes.filter((_, i) => chanceAmong(moment[i]!, around) > leastChance);
  }

  /** The same, and from now on they are among those by which later ones are judged. */
  settle(notes: readonly NetworkNote[], leastChance: number): NetworkNote[] {
    const settled = this.likely(notes, leastChance);
    if (notes.length === 0) return settled;
    const sinceSec = notes[0]!.timeSec - AROUND_SEC;
    this.#before = [...this.#before, ...settled.map(judgedOf)].filter(
      ({ onsetSample }) => onsetSample > sinceSec * RATE_HZ,
    );
    return settled;
  }
}

function judgedOf({ timeSec, midi, probability, levelDb, sounding }: NetworkNote): Judged {
  const onsetSample = Math.round(timeSec * RATE_HZ);
  return { onsetSample, midi, probability, loudness: levelDb, sounding, doubt: null };
}
