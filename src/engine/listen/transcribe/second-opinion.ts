import Meyda from 'meyda';
import { PitchDetector } from 'pitchy';
import { PowerSpectrum } from '../../base/fft.ts';
import { hzToMidi } from '../../base/units.ts';
import { hann } from '../../base/windows.ts';
import { RATE_HZ } from '../audio/index.ts';
import type { SampleHistory } from '../audio/index.ts';

/** 93 ms: two periods of the lowest key asked about and a little more */
const PITCH_LENGTH = 2048;
const COLOUR_LENGTH = 512;
/** past the knock, samples */
const AFTER_ONSET = 110;
/** the window that Meyda would take: its last value is 0 */
const COLOUR_WINDOW = COLOUR_LENGTH - 1;
/** pitches closer than this are one, semitones */
const SAME = 0.5;

/** Meyda's own way to it takes the spectrum twenty times slower, and builds banks of filters that flatness does not ask for. */
const { spectralFlatness } = Meyda.featureExtractors as {
  readonly spectralFlatness: (of: { readonly ampSpectrum: Float32Array }) => number;
};

/**
 * What ears that err otherwise than the network make of a strike: the McLeod method, which reads the period (pitchy; McLeod &
 * Wyvill 2005), and the flatness of the spectrum (Meyda; Johnston 1988), which parts tones from breath, hiss and clicks. Holds
 * its buffers (Float64: see base/fft.ts).
 */
export class SecondOpinion {
  readonly #history: SampleHistory;
  /** made for the first strike that is doubtful */
  #detector: PitchDetector<Float64Array> | undefined;
  readonly #samples = new Float64Array(PITCH_LENGTH);
  readonly #spectrum = new PowerSpectrum(COLOUR_LENGTH);
  readonly #window = hann(COLOUR_WINDOW);
  readonly #colour = new Float64Array(COLOUR_LENGTH);
  readonly #amplitudes = new Float32Array(COLOUR_LENGTH / 2);

  constructor(history: SampleHistory) {
    this.#history = history;
  }

  /** McLeod's periodicity where it hears that pitch, 0..1; else 0. `expected`: where the first partial should lie, fractional MIDI */
  agreement(onset: number, expected: number): number {
    const samples = this.#history.read(onset + AFTER_ONSET, this.#samples);
    const detector = (this.#detector ??= PitchDetector.forFloat64Array(PITCH_LENGTH));
    const [freqHz, clarity] = detector.findPitch(samples, RATE_HZ);
    const agrees = freqHz > 0 && Math.abs(hzToMidi(freqHz) - expected) < SAME;
    return agrees && Number.isFinite(clarity) ? Math.max(0, Math.min(1, clarity)) : 0;
  }

  /** Spectral flatness over the first 23 ms, 0 (a tone) .. 1 (noise; silence too). */
  flatness(onset: number): number {
    const samples = this.#history.read(onset + AFTER_ONSET, this.#colour);
    const power = this.#spectrum.measure(samples, this.#window);
    const amplitudes = this.#amplitudes;
    for (let bin = 0; bin < amplitudes.length; bin++) amplitudes[bin] = Math.sqrt(power[bin]!);
    const flatness = spectralFlatness({ ampSpectrum: amplitudes });
    return Number.isFinite(flatness) ? flatness : 1;
  }
}
