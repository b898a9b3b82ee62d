import type { Heard, PlayedNote } from '../../listen/index.ts';

/**
 * Notes closer than this sound as one to the ear's onset, and share the first 100 ms of which a level is read, seconds: its errors fall to
 * those of a note alone beyond it.
 */
const COMPANY_SEC = 0.06;

/** The other notes that sound with one. */
const companyOf = (note: PlayedNote, { notes }: Heard): readonly PlayedNote[] =>
  notes.filter((other) => other !== note && Math.abs(other.timeSec - note.timeSec) < COMPANY_SEC);

/** A note softer than another of its company by this is hidden by it, dB … */
const HIDDEN_DB = 4;
/** … and errs by so many times as much */
const HIDDEN_TIMES = 1.8;
/** Among so many others, as in chords of both hands, every note errs by so many times as much (613 steps of the development piano). */
const CROWD = 5;
const CROWD_TIMES = 1.4;

/**
 * The ear's error of an onset, in units of `Heard.onsetSdMs` (that of a note alone in the middle of the keyboard), from this key
 * upwards: the root of its mean square, with what makes it larger below taken out, over 4390 notes of 187 rendered attempts of the
 * development piano. Low strings rise slowly; of notes struck together each hides the other's attack. Large errors are many
 * (kurtosis 9 alone, 19 in company), so that two in three are smaller than three quarters of it.
 */
const BY_REGISTER = [
  { fromMidi: 79, alone: 0.75, inCompany: 1.4 },
  { fromMidi: 55, alone: 1, inCompany: 1.55 },
  { fromMidi: 43, alone: 1.3, inCompany: 2.2 },
  { fromMidi: 0, alone: 1.8, inCompany: 4.4 },
] as const;

/**
 * Notes struck together are heard nearer to each other than they were struck, by about so much of what lies between (1324 steps of both hands, 142
 * chords of one, development piano: 6 and 7 %). Figures are told as heard, as the string shows them, and have it in their ±.
 */
export const DRAWN_TOGETHER = 0.06;

/** Everything heard → the SD of the ear's error of each note's onset, ms. */
export function onsetNoise(heard: Heard): (note: PlayedNote) => number {
  const { onsetSdMs } = heard;
  return (note) => {
    const company = companyOf(note, heard);
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

/**
 * The ear's error of a note's level against the sound as it arrives, in units of `Heard.levelSdDb` (that of a note alone): among
 * others, and with a note of the same name, whose partials are its own. 1753 notes of 72 rendered attempts of the development
 * piano: 0.9, 1.4 and 2.5 dB.
 */
const IN_COMPANY = 1.5;
const WITH_ITS_OCTAVE = 2.8;

/** Everything heard → the SD of the ear's error of each note's level, dB; 0 where the listener claims none. */
export function levelNoise(heard: Heard): (note: PlayedNote) => number {
  const { levelSdDb = 0 } = heard;
  return (note) => {
    const company = companyOf(note, heard);
    if (company.length === 0) return levelSdDb;
    const octave = company.some(({ midi }) => (midi - note.midi) % 12 === 0);
    return levelSdDb * (octave ? WITH_ITS_OCTAVE : IN_COMPANY);
  };
}
