export type NoiseKind = 'pink' | 'hum' | 'speech' | 'dishes' | 'metronome';

/** What a home adds to the playing: every knob of the piano, the room and the recording. */
export interface HomeKnobs {
  /** whole piano against A4 = 440 Hz, cents */
  readonly tuningCents: number;
  /** standard deviation of single keys about it, cents, cut at ±10 */
  readonly scatterCents: number;
  /** 1: octaves stretched as on most pianos (Railsback), 0: exact equal temperament */
  readonly stretch: number;
  /** null: close microphone in a dead room */
  readonly room: { readonly decaySec: number; readonly directDb: number } | null;
  /** each so many dB below the playing */
  readonly noises: readonly { readonly kind: NoiseKind; readonly belowDb: number }[];
  /** beats a minute of a metronome among the noises */
  readonly metronomeBpm: number;
  readonly phone: boolean;
  readonly levelControl: boolean;
  /** peaks driven so many dB beyond full scale and cut there; null: none */
  readonly clipDb: number | null;
  /** greatest peak of the recording, dB of full scale */
  readonly peakDb: number;
  /** stereo: a second microphone some way off; right-only: nothing on the left; opposed: the right is the left upside down */
  readonly channels: 'mono' | 'stereo' | 'right-only' | 'opposed';
  /**
   * how far the piano's keys differ in loudness at the same blow, standard deviation, dB. Recorded keys of both sampled pianos
   * lie 1.7 and 2.6 dB (SD) about a straight line over pitch, the recorded blow's own spread included; left out: not at all
   */
  readonly keyLevelSdDb?: number;
  /** how long its dampers take, as a multiple of the usual (worn felt: more); left out: as usual */
  readonly damperTimes?: number;
}

/** A piano in tune, an ordinary living room, a quiet evening. */
export const HOME_DEFAULTS: HomeKnobs = {
  tuningCents: 0,
  scatterCents: 2,
  stretch: 0,
  room: { decaySec: 0.4, directDb: 6 },
  noises: [{ kind: 'pink', belowDb: 50 }],
  metronomeBpm: 80,
  phone: false,
  levelControl: false,
  clipDb: null,
  peakDb: -6,
  channels: 'mono',
};
