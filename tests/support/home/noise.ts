import { bandPass, filtered, highPass } from '../biquad.ts';
import type { Random } from '../random.ts';
import type { NoiseKind } from './knobs.ts';
import { speech } from './speech.ts';

/** A noise of about unit level, `length` samples long; its power is set by whoever mixes it in. */
export function noiseOf(
  kind: NoiseKind,
  length: number,
  sampleRateHz: number,
  random: Random,
  metronomeBpm: number,
): Float64Array {
  switch (kind) {
    case 'pink':
      return pinkNoise(length, random);
    case 'hum':
      return hum(length, sampleRateHz, random);
    case 'speech':
      return speech(length, sampleRateHz, random);
    case 'dishes':
      return dishes(length, sampleRateHz, random);
    case 'metronome':
      return metronome(length, sampleRateHz, metronomeBpm, random);
  }
}

/** Noise with 3 dB less an octave: white noise through six first-order sections (coefficients: Paul Kellet, from memory). */
export function pinkNoise(length: number, random: Random): Float64Array {
  const poles = [0.99886, 0.99332, 0.969, 0.8665, 0.55, -0.7616];
  const gains = [0.0555179, 0.0750759, 0.153852, 0.3104856, 0.5329522, -0.016898];
  const state = new Float64Array(poles.length);
  const out = new Float64Array(length);
  for (let at = 0; at < length; at++) {
    const white = random.normal(1);
    let sum = white * 0.5362;
    for (let index = 0; index < poles.length; index++) {
      state[index] = poles[index]! * state[index]! + gains[index]! * white;
      sum += state[index]!;
    }
    out[at] = sum;
  }
  return out;
}

/** Mains at 50 or 60 Hz with odd and even harmonics that fall off (common practice, no source). */
function hum(length: number, sampleRateHz: number, random: Random): Float64Array {
  const mainsHz = random.pick([50, 60]);
  const harmonics = Array.from({ length: 12 }, (_, index) => ({
    step: (2 * Math.PI * mainsHz * (index + 1)) / sampleRateHz,
    gain: (index % 2 === 0 ? 1 : 0.6) / (index + 1) ** 0.8,
    phase: random.uniform(0, 2 * Math.PI),
  }));
  return Float64Array.from({ length }, (_, index) =>
    harmonics.reduce((sum, { step, gain, phase }) => sum + gain * Math.sin(step * index + phase), 0),
  );
}

/** Plates and cutlery: now and then a few inharmonic ringing modes at 1.5–8 kHz. */
export function dishes(length: number, sampleRateHz: number, random: Random): Float64Array {
  const out = new Float64Array(length);
  for (let sec = random.uniform(0, 0.6); sec * sampleRateHz < length; sec += random.uniform(0.2, 1.2)) {
    const strength = random.uniform(0.3, 1);
    for (let mode = 0; mode < 6; mode++)
      ring(out, sec, sampleRateHz, random.uniform(1500, 8000), random.uniform(0.02, 0.12), strength / 6);
  }
  return out;
}

/** A wooden click on every beat. */
function metronome(length: number, sampleRateHz: number, bpm: number, random: Random): Float64Array {
  const out = new Float64Array(length);
  for (let sec = random.uniform(0, 60 / bpm); sec * sampleRateHz < length; sec += 60 / bpm) {
    ring(out, sec, sampleRateHz, 1800, 0.006, 0.7);
    ring(out, sec, sampleRateHz, 3100, 0.004, 0.4);
  }
  return out;
}

/** Three blows on a wooden door, or one: damped low modes and a burst of noise. */
export function knocks(length: number, sampleRateHz: number, random: Random): Float64Array {
  const out = new Float64Array(length);
  for (let sec = 0.5; sec * sampleRateHz < length - sampleRateHz * 0.3; sec += random.uniform(0.25, 0.9)) {
    for (const freqHz of [95, 160, 270, 410])
      ring(out, sec, sampleRateHz, freqHz * random.uniform(0.97, 1.03), random.uniform(0.02, 0.045), 0.4);
    burst(out, sec, sampleRateHz, 900, 1, 0.008, 0.5, random);
  }
  return out;
}

/** Hands clapped. */
export function claps(length: number, sampleRateHz: number, random: Random): Float64Array {
  const out = new Float64Array(length);
  for (let sec = 0.5; sec * sampleRateHz < length - sampleRateHz * 0.3; sec += random.uniform(0.3, 0.8))
    burst(out, sec, sampleRateHz, random.uniform(900, 1800), 0.8, 0.02, 1, random);
  return out;
}

/** A page turned: paper that rustles and crackles for half a second. */
export function pages(length: number, sampleRateHz: number, random: Random): Float64Array {
  const out = new Float64Array(length);
  for (let sec = 0.3; (sec + 0.8) * sampleRateHz < length; sec += random.uniform(0.9, 1.8)) {
    const endSec = sec + random.uniform(0.3, 0.7);
    for (let crackle = sec; crackle < endSec; crackle += random.uniform(0.004, 0.03))
      burst(
        out,
        crackle,
        sampleRateHz,
        random.uniform(1500, 7000),
        0.9,
        0.006,
        random.uniform(0.1, 1),
        random,
      );
  }
  return out;
}

/** Adds a decaying sine. `decaySec`: to 1/e. */
export function ring(
  out: Float64Array,
  fromSec: number,
  sampleRateHz: number,
  freqHz: number,
  decaySec: number,
  gain: number,
): void {
  const from = Math.round(fromSec * sampleRateHz);
  const count = Math.min(Math.round(decaySec * 8 * sampleRateHz), out.length - from);
  for (let index = 0; index < count; index++) {
    const sec = index / sampleRateHz;
    out[from + index]! += gain * Math.exp(-sec / decaySec) * Math.sin(2 * Math.PI * freqHz * sec);
  }
}

/** Adds a decaying burst of noise about a frequency. */
export function burst(
  out: Float64Array,
  fromSec: number,
  sampleRateHz: number,
  freqHz: number,
  quality: number,
  decaySec: number,
  gain: number,
  random: Random,
): void {
  const from = Math.round(fromSec * sampleRateHz);
  const count = Math.max(Math.min(Math.round(decaySec * 8 * sampleRateHz), out.length - from), 0);
  const raw = Float64Array.from(
    { length: count },
    (_, index) => random.normal(1) * Math.exp(-index / sampleRateHz / decaySec),
  );
  const shaped = filtered(raw, [bandPass(freqHz, sampleRateHz, quality), highPass(60, sampleRateHz)]);
  shaped.forEach((value, index) => (out[from + index]! += gain * value));
}
