/** A key that may have been struck, with what speaks for it; settled once its neighbours in time are known. */
export interface OnsetCandidate {
  readonly onsetSample: number;
  readonly midi: number;
  /** the network's belief, 0..1 */
  readonly probability: number;
  /** the network's reading of its loudness, dB about the training's middle */
  readonly loudness: number;
  /** the network's belief that the key sounds a moment later, 0..1 */
  readonly sounding: number;
  /** power of its own partials over its first 100 ms, dB */
  readonly levelDb: number;
  /** first partial as a fractional MIDI number at A4 = 440 Hz; where it cannot be read, where the tuning puts the key */
  readonly pitch: number;
  readonly pitchRead: boolean;
  readonly stiffness: number;
  /** spectral flatness just after the onset, 0 (a tone) .. 1 (noise) */
  readonly flatness: number;
  /** McLeod's periodicity at this key's own pitch, 0..1; 0 where another pitch or none is heard; null: not asked, there being no doubt */
  readonly agreement: number | null;
  /** when its damper fell; null where that cannot be heard, or not yet */
  releaseSample: number | null;
}

/** A key that was most probably not struck: noted for who knows what was to be played. */
export type FaintCandidate = Pick<
  OnsetCandidate,
  'onsetSample' | 'midi' | 'probability' | 'loudness' | 'sounding'
>;
