import Meyda from 'meyda';
import { PitchDetector } from 'pitchy';
import { hzToMidi } from '../../base/units.ts';
import { RATE_HZ } from '../audio/index.ts';
import type { SampleHistory } from '../audio/index.ts';

/** 93 ms: two periods of the lowest key asked about and a little more */
const PITCH_LENGTH = 2048;
const COLOUR_LENGTH = 512;
/** past the knock, samples */
const AFTER_ONSET = 110;
/** pitches closer than this are one, semitones */
const SAME = 0.5;

/**
 * What ears that err otherwise than the network make of a strike: the McLeod method, which reads the period (pitchy; McLeod &
 * Wyvill 2005), and the flatness of the spectrum (Meyda; Johnston 1988), which parts tones from breath, hiss and clicks. Holds
 * its buffers (Float64: see base/fft.ts).
 */
export class SecondOpinion {
  readonly #history: SampleHistory;
  readonly #detector = PitchDetector.forFloat64Array(PITCH_LENGTH);
  readonly #samples = new Float64Array(PITCH_LENGTH);
  readonly #colour = new Float64Array(COLOUR_LENGTH);

  constructor(history: SampleHistory) {
    this.#history = history;
  }

  /** McLeod's periodicity where it hears that pitch, 0..1; else 0. `expected`: where the first partial should lie, fractional MIDI */
  agreement(onset: number, expected: number): number {
    const samples = this.#history.read(onset + AFTER_ONSET, this.#samples);
    const [freqHz, clarity] = this.#detector.findPitch(samples, RATE_HZ);
    const agrees = freqHz > 0 && Math.abs(hzToMidi(freqHz) - expected) < SAME;
    return agrees && Number.isFinite(clarity) ? Math.max(0, Math.min(1, clarity)) : 0;
  }

  /** Spectral flatness over the first 23 ms, 0 (a tone) .. 1 (noise; silence too). */
  flatness(onset: number): number {
    const samples = this.#history.read(onset + AFTER_ONSET, this.#colour);
    Meyda.bufferSize = COLOUR_LENGTH;
    Meyda.sampleRate = RATE_HZ;
    const flatness = Meyda.extract('spectralFlatness', Float32Array.from(samples));
    return typeof flatness === 'number' && Number.isFinite(flatness) ? flatness : 1;
  }
}
