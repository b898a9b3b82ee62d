import Meyda from 'meyda';
import { PitchDetector } from 'pitchy';
import type { AudioInput } from '../../src/engine/index.ts';
import type { Timed } from './note-score.ts';

const FRAME = 2048;
const HOP = 512;
/** The best of five settings tried on 24 attempts of the standard set. */
const RISE = 3.5;
const LEAST_RMS = 0.004;
const LEAST_GAP_SEC = 0.09;
const PITCH_AFTER_SEC = 0.05;
const LEAST_CLARITY = 0.8;

/**
 * What one would write in an afternoon, to compare with: an onset wherever the spectrum gains much against the median gain
 * of its surroundings (Meyda's amplitude spectrum and RMS; its own spectralFlux throws in 5.6.3), and one pitch after each
 * onset by the McLeod method (pitchy). Hears one note at a time.
 */
export function naiveNotes({ channels, sampleRateHz }: AudioInput): readonly Timed[] {
  const samples = channels[0]!;
  Meyda.bufferSize = FRAME;
  Meyda.sampleRate = sampleRateHz;
  const gains: number[] = [];
  const loud: boolean[] = [];
  let before: Float32Array | null = null;
  for (let from = 0; from + FRAME <= samples.length; from += HOP) {
    const features = Meyda.extract(['amplitudeSpectrum', 'rms'], samples.subarray(from, from + FRAME));
    const spectrum = features?.amplitudeSpectrum ?? new Float32Array(FRAME / 2);
    const last: Float32Array | null = before;
    gains.push(
      last === null ? 0 : spectrum.reduce((sum, value, bin) => sum + Math.max(value - last[bin]!, 0), 0),
    );
    loud.push((features?.rms ?? 0) > LEAST_RMS);
    before = Float32Array.from(spectrum);
  }
  const detector = PitchDetector.forFloat32Array(FRAME);
  const notes: Timed[] = [];
  for (let frame = 1; frame + 1 < gains.length; frame++) {
    const around = gains.slice(Math.max(0, frame - 12), frame + 13).sort((a, b) => a - b);
    const usual = around[around.length >> 1]!;
    const peak = gains[frame]! >= gains[frame - 1]! && gains[frame]! > gains[frame + 1]!;
    if (!peak || gains[frame]! < RISE * usual + 1 || !loud[frame]) continue;
    // A gain is greatest where the attack lies about two fifths into the frame (median error of those 24 attempts: −1 ms).
    const timeSec = (frame * HOP + 0.4 * FRAME) / sampleRateHz;
    if (timeSec - (notes.at(-1)?.timeSec ?? -1) < LEAST_GAP_SEC) continue;
    const from = Math.round((timeSec + PITCH_AFTER_SEC) * sampleRateHz);
    if (from + FRAME > samples.length) break;
    const [freqHz, clarity] = detector.findPitch(samples.subarray(from, from + FRAME), sampleRateHz);
    if (clarity < LEAST_CLARITY || freqHz < 25) continue;
    notes.push({ timeSec, midi: Math.round(69 + 12 * Math.log2(freqHz / 440)) });
  }
  return notes;
}
