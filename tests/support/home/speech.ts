import { bandPass } from '../biquad.ts';
import type { Random } from '../random.ts';
import { burst } from './noise.ts';

/** First three formants of five vowels, Hz (Peterson & Barney 1952, men's means, from memory, rounded). */
const VOWELS = [
  [730, 1090, 2440],
  [530, 1840, 2480],
  [270, 2290, 3010],
  [570, 840, 2410],
  [300, 870, 2240],
] as const;

/** Samples between two looks at pitch and formants. */
const CONTROL = 64;

/**
 * Somebody talking in the room: a buzzing voice whose pitch glides about 90–230 Hz, in syllables of 120–260 ms through
 * moving formants, with hisses and bursts of air between, and pauses for breath. No words, but pitched, gliding and
 * rhythmical as speech is.
 */
export function speech(length: number, sampleRateHz: number, random: Random): Float64Array {
  const out = new Float64Array(length);
  const voiceHz = random.uniform(100, 200);
  let sec = random.uniform(0, 0.4);
  while (sec * sampleRateHz < length) {
    const phraseEndSec = sec + random.uniform(0.9, 2.2);
    let pitchHz = voiceHz * random.uniform(1.05, 1.3);
    while (sec < phraseEndSec && sec * sampleRateHz < length) {
      if (random.chance(0.5)) {
        const hissSec = random.uniform(0.03, 0.09);
        burst(out, sec, sampleRateHz, random.uniform(2200, 6500), 1.2, hissSec / 3, 0.25, random);
        sec += hissSec;
      }
      const syllableSec = random.uniform(0.12, 0.26);
      const endHz = pitchHz * random.uniform(0.82, 1.12);
      syllable(out, sec, syllableSec, [pitchHz, endHz], sampleRateHz, random);
      pitchHz = Math.min(Math.max(endHz * random.uniform(0.95, 1.05), 0.75 * voiceHz), 1.5 * voiceHz);
      sec += syllableSec * random.uniform(0.9, 1.15);
    }
    sec += random.uniform(0.25, 0.9);
  }
  return out;
}

function syllable(
  out: Float64Array,
  fromSec: number,
  lengthSec: number,
  pitchHz: readonly [number, number],
  sampleRateHz: number,
  random: Random,
): void {
  const from = Math.round(fromSec * sampleRateHz);
  const count = Math.min(Math.round(lengthSec * sampleRateHz), out.length - from);
  const begin = random.pick(VOWELS);
  const end = random.pick(VOWELS);
  const state = [0, 1, 2].map(() => ({ x1: 0, x2: 0, y1: 0, y2: 0 }));
  const strength = random.uniform(0.5, 1);
  let sections = [bandPass(begin[0], sampleRateHz, 8)];
  let phase = 0;
  for (let index = 0; index < count; index++) {
    const share = index / count;
    if (index % CONTROL === 0)
      sections = [0, 1, 2].map((formant) => {
        const freqHz = begin[formant]! + (end[formant]! - begin[formant]!) * share;
        return bandPass(freqHz, sampleRateHz, [7, 10, 14][formant]!);
      });
    const wobble = 1 + 0.01 * Math.sin(2 * Math.PI * 5.5 * (fromSec + index / sampleRateHz));
    phase += ((pitchHz[0] + (pitchHz[1] - pitchHz[0]) * share) * wobble) / sampleRateHz;
    phase -= Math.floor(phase);
    // A falling ramp stands for the flow of air through the glottis: all harmonics, 6 dB less an octave.
    const source = (0.5 - phase) * Math.sin(Math.PI * share) ** 0.7 * strength + random.normal(0.01);
    for (let formant = 0; formant < 3; formant++) {
      const { b, a } = sections[formant]!;
      const past = state[formant]!;
      const y = b[0] * source + b[1] * past.x1 + b[2] * past.x2 - a[0] * past.y1 - a[1] * past.y2;
      past.x2 = past.x1;
      past.x1 = source;
      past.y2 = past.y1;
      past.y1 = y;
      out[from + index]! += y * [1, 0.6, 0.3][formant]!;
    }
  }
}
