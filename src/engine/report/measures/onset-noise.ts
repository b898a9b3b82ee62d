import type { Heard, PlayedNote } from '../../listen/index.ts';

/** Notes closer than this sound as one to the ear's onset, seconds: its errors fall to those of a note alone beyond it. */
const COMPANY_SEC = 0.06;

/** A note softer than another of its company by this is hidden by it, dB … */
const HIDDEN_DB = 4;
/** … and errs by so many times as much */
const HIDDEN_TIMES = 1.8;
/** Among so many others, as in chords of both hands, every note errs by so many times as much (613 steps of the development piano). */
const CROWD = 5;
const CROWD_TIMES = 1.4;

/**
 * The ear's error of an onset, in units of `Heard.onsetSdMs` (that of a note alone in the middle of the keyboard), from this key
 * upwards. Measured on 1753 notes of 72 rendered attempts of the development piano: half of the distance within which 92 of 100
 * lie, so that wide tails count; in company a fifth more, since that piano was among those the ear learnt from. Low strings rise
 * slowly; of notes struck together each hides the other's attack.
 */
const BY_REGISTER = [
  { fromMidi: 79, alone: 0.75, inCompany: 1.2 },
  { fromMidi: 55, alone: 1, inCompany: 1.7 },
  { fromMidi: 43, alone: 1, inCompany: 2.5 },
  { fromMidi: 0, alone: 1.4, inCompany: 3.8 },
] as const;

/** Everything heard → the SD of the ear's error of each note's onset, ms. */
export function onsetNoise({ notes, onsetSdMs }: Heard): (note: PlayedNote) => number {
  return (note) => {
    const company = notes.filter(
      (other) => other !== note && Math.abs(other.timeSec - note.timeSec) < COMPANY_SEC,
    );
    const { alone, inCompany } = BY_REGISTER.find(({ fromMidi }) => note.midi >= fromMidi)!;
    if (company.length === 0) return onsetSdMs * alone;
    const hidden = company.some(({ levelDb }) => levelDb > note.levelDb + HIDDEN_DB);
    const crowded = company.length >= CROWD;
    return onsetSdMs * inCompany * (hidden ? HIDDEN_TIMES : 1) * (crowded ? CROWD_TIMES : 1);
  };
}

/** Notes of one strike, which is placed at their mean → the variance of that place, ms². */
export function strikeVariance(notes: readonly { readonly onsetSdMs: number }[]): number {
  return notes.reduce((sum, { onsetSdMs }) => sum + onsetSdMs ** 2, 0) / notes.length ** 2;
}
