/** One spectrum that the network sees in each frame. */
export interface View {
  /** samples it is taken over */
  readonly size: number;
  /** its centre after the frame's, samples */
  readonly momentSamples: number;
  /** log bins that a key looks at, counted from the key's own */
  readonly bins: readonly number[];
}

/** Everything about features and network that is not a weight. */
export interface NetworkShape {
  readonly rateHz: number;
  /** samples between frames; frame t is centred on sample t · hop */
  readonly hop: number;
  readonly lowestMidi: number;
  /** a multiple of 4 */
  readonly keys: number;
  /** three a semitone */
  readonly binsPerOctave: number;
  /** log bins of each view */
  readonly bins: number;
  /** log bins below the lowest key's own */
  readonly binsBelow: number;
  readonly views: readonly View[];
  /** equal parts of each view whose means every key sees */
  readonly bands: number;
  /** a multiple of 8 */
  readonly channels: number;
  /** frames that a block looks at, times its dilation */
  readonly steps: readonly number[];
  /** one for each block */
  readonly dilations: readonly number[];
  /** semitones from which a key hears its neighbours */
  readonly keyOffsets: readonly number[];
}

/** How onsets are read from the network's word. */
export interface Peaks {
  /** a peak is highest among so many frames on each side */
  readonly reach: number;
  /** frames on each side of a peak that have a say in its moment */
  readonly timeReach: number;
  /** frames on each side of a peak whose probabilities are summed */
  readonly sumReach: number;
  /** what that sum comes to at a sure onset: the area of the training's bell, √(2π) · σ */
  readonly fullSum: number;
}

/** A trained network as it lies in the repository. */
export interface PackedNetwork {
  readonly shape: NetworkShape;
  readonly peaks: Peaks;
  /** float16, little-endian, in base64 */
  readonly float16Base64: string;
}

/** Where the samples come from: one channel at `NetworkShape.rateHz`. */
export interface SampleSource {
  /** Copies `length` samples from absolute index `start` on (may be negative) into `out`; what is not there reads as 0. */
  read(start: number, out: Float64Array, length?: number): Float64Array;
}
