import { claps, dishes, knocks, pages, pinkNoise, ring } from './home/noise.ts';
import { speech } from './home/speech.ts';
import { createRandom } from './random.ts';
import type { Random } from './random.ts';
import { SAMPLE_RATE_HZ } from './render.ts';

/** Sounds that are no piano being played. */
export const OTHER_SOUNDS = [
  'silence',
  'noise',
  'speech',
  'beeps',
  'knocks',
  'claps',
  'dishes',
  'pages',
  'plucked string',
  'bowed tone',
] as const;
export type OtherSound = (typeof OTHER_SOUNDS)[number];

/** Kind, length and seed → one channel with its peak at −6 dB (silence: zeros). */
export function otherSound(
  kind: OtherSound,
  seconds: number,
  seed: number,
): { readonly channels: readonly Float32Array[]; readonly sampleRateHz: number } {
  const length = Math.round(seconds * SAMPLE_RATE_HZ);
  const raw = soundOf(kind, length, createRandom(seed).fork(kind));
  const peak = raw.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return {
    channels: [Float32Array.from(raw, (value) => (peak === 0 ? 0 : (0.5 * value) / peak))],
    sampleRateHz: SAMPLE_RATE_HZ,
  };
}

function soundOf(kind: OtherSound, length: number, random: Random): Float64Array {
  switch (kind) {
    case 'silence':
      return new Float64Array(length);
    case 'noise':
      return pinkNoise(length, random);
    case 'speech':
      return speech(length, SAMPLE_RATE_HZ, random);
    case 'beeps':
      return beeps(length, random);
    case 'knocks':
      return knocks(length, SAMPLE_RATE_HZ, random);
    case 'claps':
      return claps(length, SAMPLE_RATE_HZ, random);
    case 'dishes':
      return dishes(length, SAMPLE_RATE_HZ, random);
    case 'pages':
      return pages(length, SAMPLE_RATE_HZ, random);
    case 'plucked string':
      return pluckedScale(length, random);
    case 'bowed tone':
      return bowedScale(length, random);
  }
}

/** An appliance: sines of 1–3 kHz that start and stop at once. */
function beeps(length: number, random: Random): Float64Array {
  const out = new Float64Array(length);
  const freqHz = random.uniform(1000, 3000);
  for (let sec = 0.3; sec * SAMPLE_RATE_HZ < length; sec += random.uniform(0.4, 1.2)) {
    const from = Math.round(sec * SAMPLE_RATE_HZ);
    const to = Math.min(from + Math.round(0.2 * SAMPLE_RATE_HZ), length);
    for (let index = from; index < to; index++)
      out[index]! += Math.sin((2 * Math.PI * freqHz * (index - from)) / SAMPLE_RATE_HZ);
  }
  return out;
}

const MAJOR_SCALE = [0, 2, 4, 5, 7, 9, 11, 12];

/** A guitar-like scale: harmonic partials that all begin at once and die away, the high ones sooner. */
function pluckedScale(length: number, random: Random): Float64Array {
  const out = new Float64Array(length);
  for (let note = 0; (0.4 + note * 0.4) * SAMPLE_RATE_HZ < length; note++) {
    const freqHz = 196 * 2 ** (MAJOR_SCALE[note % 8]! / 12);
    for (let n = 1; n <= 12; n++)
      ring(
        out,
        0.4 + note * 0.4 + random.uniform(0, 0.01),
        SAMPLE_RATE_HZ,
        n * freqHz,
        0.35 / n ** 0.7,
        1 / n,
      );
  }
  return out;
}

/** A violin-like scale: harmonic partials that swell over 80 ms, with vibrato and a little bow noise. */
function bowedScale(length: number, random: Random): Float64Array {
  const out = new Float64Array(length);
  const noteSec = 0.6;
  let phase = 0;
  for (let index = 0; index < length; index++) {
    const sec = index / SAMPLE_RATE_HZ - 0.3;
    if (sec < 0) continue;
    const note = Math.floor(sec / noteSec);
    const within = sec - note * noteSec;
    const vibrato = 2 ** ((15 * Math.sin(2 * Math.PI * 5.5 * sec)) / 1200);
    phase += (293.66 * 2 ** (MAJOR_SCALE[note % 8]! / 12) * vibrato) / SAMPLE_RATE_HZ;
    const swell = Math.min(within / 0.08, 1) * Math.min((noteSec - within) / 0.05, 1);
    let value = 0;
    for (let n = 1; n <= 10; n++) value += Math.sin(2 * Math.PI * n * phase) / n;
    out[index] = swell * (value + random.normal(0.03));
  }
  return out;
}
