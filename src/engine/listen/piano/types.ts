/** A figure learnt from several strikes. */
export interface Learnt {
  readonly value: number;
  /** ± of `value`, one standard deviation */
  readonly plusMinus: number;
  /** strikes behind it */
  readonly count: number;
}

/** What is known of one key. */
export interface KeyProfile {
  /** power of its own partials over its first 100 ms, dB (full-scale sine = 0), as this player strikes it */
  readonly levelDb: Learnt;
  /** distance from the piano's own tuning, the usual stretch taken out, cents; absent where no partial could be read */
  readonly cents?: Learnt;
  /** inharmonicity B as log10, since pianos differ by factors (Fletcher 1964); absent where no partial could be read */
  readonly logStiffness?: Learnt;
}

/** What was seen at a key's partials while the keys of one step were struck by one hand alone, in one attempt. */
export interface AloneLook {
  /** levels as the closer look compares them, a byte each (`recheck/alone`), base64 */
  readonly seen: string;
}

/** Keys of a step and the key looked at, as `nameOfLook` puts them in one word → looks, the newest first. */
export type HandsAlone = Readonly<Record<string, readonly AloneLook[]>>;

/**
 * *This piano*, as it sounds at this place: learnt from a room check or an attempt, refined by each later one. Plain data, to
 * be kept as JSON.
 */
export interface PianoProfile {
  readonly version: 1;
  /** whole-piano offset from A4 = 440 Hz, cents */
  readonly tuningCents: Learnt;
  /**
   * the same where somebody said which exercise it was, so that it is known which of two keys a semitone apart was struck, cents;
   * absent: it is as it was read, and a piano 80 flat reads as one 20 sharp
   */
  readonly settledCents?: number;
  /** keys heard so far, by MIDI number */
  readonly keys: Readonly<Record<number, KeyProfile>>;
  /** what hands alone sounded like from where the device stands; absent: no hand was heard alone */
  readonly alone?: HandsAlone;
}
