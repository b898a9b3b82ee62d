/** The trained network as it lies in the repository; its shape follows from `VIEWS`, `STRIPS` and these sizes. */
export interface PackedLook {
  /** units of the layers, by name in the training code */
  readonly sizes: {
    readonly mixed: number;
    readonly channels: number;
    readonly seen: number;
    readonly written: number;
    readonly told: number;
    readonly joined: number;
    readonly last: number;
    readonly compared: number;
    readonly compressed: number;
  };
  /** float16, little-endian, in base64 */
  readonly float16Base64: string;
}

/** A key that the blind ear took for struck near a moment, however faintly. */
export interface BlindBelief {
  /** 0..1 */
  readonly probability: number;
  /** its onset less the moment asked about, s */
  readonly apartSec: number;
  /** the ear's reading of its loudness, dB about the middle of what it was trained on */
  readonly loudnessDb: number;
  /** 0..1: the key sounds a moment later */
  readonly sounding: number;
}

/** What the blind ear says on the whole of a hand's notes that were heard right. */
export interface Usual {
  /** mean log odds of its belief */
  readonly belief: number;
  readonly loudnessDb: number;
}

/** A key at a moment. Keys are MIDI numbers as the listener heard them. */
export interface Place {
  readonly timeSec: number;
  readonly midi: number;
  /** this string's expected distance from equal temperament at A4 = 440 Hz, cents */
  readonly cents: number;
  /** what the samples are multiplied by, so that the playing has an active RMS of 0.1 */
  readonly gain: number;
}

/** One key asked about at one moment. */
export interface Question extends Place {
  /** keys written at this step, the one before and the one after */
  readonly written: readonly number[];
  readonly before: { readonly midis: readonly number[]; readonly sinceSec: number } | null;
  readonly after: { readonly midis: readonly number[]; readonly untilSec: number } | null;
  /** what the blind ear says of the key so many semitones away; null: nothing */
  readonly told: (semitones: number) => BlindBelief | null;
  /** null where fewer than two notes of the hand were heard */
  readonly ownHand: Usual | null;
  readonly otherHand: Usual | null;
}

export interface Look {
  /** log odds that the key was struck, among steps of which about one written note in ten is left out */
  readonly logOdds: number;
  /** when, if it was struck, s */
  readonly timeSec: number;
  /** mean error of `timeSec` to be expected, s */
  readonly spreadSec: number;
}

/** A look, and what it saw, for comparing with other looks. */
export interface Glance extends Look {
  readonly glimpse: Glimpse;
}

/** What the network makes of one question by itself; a network's inner values, in no unit. */
export interface Glimpse {
  /** levels at each frequency while the key would sound */
  readonly levels: Float32Array;
  /** the sound as it was read */
  readonly seen: Float32Array;
  /** what the blind ear said, as it was read */
  readonly told: Float32Array;
  /** the last layer before anything is cut off */
  readonly last: Float32Array;
  /** what the blind ear said of key and moment, to which the network adds */
  readonly belief: number;
  readonly moment: number;
  /** the moment asked about, s */
  readonly centreSec: number;
}
