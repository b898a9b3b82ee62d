import Meyda from 'meyda';
import { PitchDetector } from 'pitchy';
import { hzToMidi } from '../../base/units.ts';
import { RATE_HZ } from '../audio/index.ts';
import type { SampleHistory } from '../audio/index.ts';
import type { Doubt } from './onset-candidate.ts';

/** 93 ms: two periods of the lowest key asked about and a little more */
const PITCH_LENGTH = 2048;
const COLOUR_LENGTH = 512;
/** past the knock, samples */
const AFTER_ONSET = 110;
/** pitches closer than this are one, semitones */
const SAME = 0.5;

/**
 * A second opinion on a doubtful strike, from two ears that err otherwise than the network: the McLeod method, which reads
 * the period (pitchy; McLeod & Wyvill 2005), and the flatness of the spectrum (Meyda), which parts tones from doors and
 * clicks. Asked only where there is doubt: Meyda's spectrum is slow. Holds its buffers (Float64: see base/fft.ts).
 */
export class SecondOpinion {
  readonly #history: SampleHistory;
  readonly #detector = PitchDetector.forFloat64Array(PITCH_LENGTH);
  readonly #samples = new Float64Array(PITCH_LENGTH);

  constructor(history: SampleHistory) {
    this.#history = history;
  }

  /** @param expected where the first partial should lie, fractional MIDI */
  ask(onset: number, expected: number): Doubt {
    const samples = this.#history.read(onset + AFTER_ONSET, this.#samples);
    const [freqHz, clarity] = this.#detector.findPitch(samples, RATE_HZ);
    const agrees = freqHz > 0 && Math.abs(hzToMidi(freqHz) - expected) < SAME;
    Meyda.bufferSize = COLOUR_LENGTH;
    Meyda.sampleRate = RATE_HZ;
    const flatness = Meyda.extract('spectralFlatness', Float32Array.from(samples.subarray(0, COLOUR_LENGTH)));
    return {
      agreement: agrees && Number.isFinite(clarity) ? Math.max(0, Math.min(1, clarity)) : 0,
      flatness: typeof flatness === 'number' && Number.isFinite(flatness) ? flatness : 1,
    };
  }
}
