import { RATE_HZ } from '../listen/audio/index.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import { chanceAmong } from '../listen/transcribe/settle.ts';
import type { Judged } from '../listen/transcribe/settle.ts';

/** a note is judged by those of so many seconds before it, and of its own moment */
const AROUND_SEC = 3;
/**
 * Hands an octave or more apart: the upper note hides among the lower one's partials, so that early on it seems but half as likely
 * as it is. Where half of what was just played were such pairs, one is expected: within `togetherSec`, seconds, of a likely note.
 */
const OCTAVES = { semitones: [12, 24, 36], leastShare: 0.5, leastChance: 0.2, togetherSec: 0.05 } as const;

/** What was heard early on, and how likely it was struck. */
export interface Guess {
  readonly note: NetworkNote;
  readonly chance: number;
}

/**
 * What the network believes → what is told, each note judged among those before it and with it, as `settle` does with a whole
 * recording. What comes after is not waited for.
 */
export class Judge {
  #before: readonly Judged[] = [];
  /** guessed of late */
  #likely: readonly NetworkNote[] = [];

  /** Those of `notes` that are likely enough to be drawn before they are certain. */
  guess(notes: readonly NetworkNote[], leastChance: number): Guess[] {
    const weighed = this.#weigh(notes);
    const likely = weighed.filter(({ chance }) => chance > leastChance).map(({ note }) => note);
    if (notes.length > 0)
      this.#likely = [...this.#likely, ...likely].filter(({ timeSec }) => timeSec > notes[0]!.timeSec - 1);
    const inOctaves = playsOctaves(this.#before);
    return weighed.filter(
      ({ note, chance }) =>
        chance > leastChance ||
        (inOctaves && chance > OCTAVES.leastChance && this.#likely.some((other) => isOctave(note, other))),
    );
  }

  /** Those of `notes` that were struck; from now on they are among those by which later ones are judged. */
  settle(notes: readonly NetworkNote[], leastChance: number): NetworkNote[] {
    const settled = this.#weigh(notes)
      .filter(({ chance }) => chance > leastChance)
      .map(({ note }) => note);
    if (notes.length === 0) return settled;
    const sinceSec = notes[0]!.timeSec - AROUND_SEC;
    this.#before = [...this.#before, ...settled.map(judgedOf)].filter(
      ({ onsetSample }) => onsetSample > sinceSec * RATE_HZ,
    );
    return settled;
  }

  #weigh(notes: readonly NetworkNote[]): Guess[] {
    const moment = notes.map(judgedOf);
    const around = [...this.#before, ...moment];
    return notes.map((note, i) => ({ note, chance: chanceAmong(moment[i]!, around) }));
  }
}

type Struck = Pick<NetworkNote, 'timeSec' | 'midi'>;

function isOctave(note: Struck, other: Struck): boolean {
  const apart = Math.abs(note.midi - other.midi);
  return (
    OCTAVES.semitones.some((octave) => octave === apart) &&
    Math.abs(note.timeSec - other.timeSec) < OCTAVES.togetherSec
  );
}

/** What has just been struck, in order of time → whether half of its moments held a pair of keys octaves apart. */
function playsOctaves(struck: readonly Judged[]): boolean {
  const notes = struck.map(({ onsetSample, midi }) => ({ timeSec: onsetSample / RATE_HZ, midi }));
  const moments = notes.filter(
    ({ timeSec }, i) => i === 0 || timeSec - notes[i - 1]!.timeSec > OCTAVES.togetherSec,
  ).length;
  const pairs = notes.filter((note, i) => notes.slice(0, i).some((other) => isOctave(note, other))).length;
  return pairs > 0 && pairs >= OCTAVES.leastShare * moments;
}

function judgedOf({ timeSec, midi, probability, levelDb, sounding }: NetworkNote): Judged {
  const onsetSample = Math.round(timeSec * RATE_HZ);
  return { onsetSample, midi, probability, loudness: levelDb, sounding, flatness: 0, agreement: null };
}
