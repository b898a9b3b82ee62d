import type { Heard, PlayedNote } from '../../listen/index.ts';

/** Notes closer than this share the first 100 ms of which a level is read, seconds. */
const COMPANY_SEC = 0.06;
/**
 * The ear's error of a note's level against the sound as it arrives, in units of `Heard.levelSdDb` (that of a note alone): among
 * others, and with a note of the same name, whose partials are its own. 1753 notes of 72 rendered attempts of the development
 * piano: 0.9, 1.4 and 2.5 dB.
 */
const IN_COMPANY = 1.5;
const WITH_ITS_OCTAVE = 2.8;

/** Everything heard → the SD of the ear's error of each note's level, dB; 0 where the listener claims none. */
export function levelNoise({ notes, levelSdDb = 0 }: Heard): (note: PlayedNote) => number {
  return (note) => {
    const company = notes.filter(
      (other) => other !== note && Math.abs(other.timeSec - note.timeSec) < COMPANY_SEC,
    );
    if (company.length === 0) return levelSdDb;
    const octave = company.some(({ midi }) => (midi - note.midi) % 12 === 0);
    return levelSdDb * (octave ? WITH_ITS_OCTAVE : IN_COMPANY);
  };
}
