import { describe, expect, it } from 'vitest';
import { checkRoom, measureSilence } from '../../../src/engine/index.ts';
import { playStrings } from '../listen/strings.ts';

const RATE = 22_050;
const audio = (samples: Float32Array) => ({ channels: [samples], sampleRateHz: RATE });
/** White noise by a linear congruence (Numerical Recipes), RMS `level`. */
const noise = (seconds: number, level: number): Float32Array => {
  let state = 9;
  return Float32Array.from({ length: seconds * RATE }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return level * Math.sqrt(3) * (state / 2 ** 31 - 1);
  });
};
const three = [41, 60, 79].map((midi, i) => ({ timeSec: 0.5 + 1.2 * i, midi, cents: -18 }));
const played = (gain = 1, level = 0): Float32Array => {
  const bed = noise(5, level);
  return playStrings(three, { seconds: 5, gain }).map((value, i) => value + bed[i]!);
};
const check = (silence: Float32Array, sound: Float32Array) =>
  checkRoom(measureSilence(audio(silence)), audio(sound));
const kinds = (room: ReturnType<typeof check>) => room.findings.map(({ kind }) => kind);

describe('the silence of a room', () => {
  it('is told in dB: noise of RMS 0.01 lies at −37 dB of a full-scale sine (closed form: 20·log10(0.01·√2))', () => {
    expect(measureSilence(audio(noise(3, 0.01))).noiseDb).toBeCloseTo(-37, 0);
  });

  it('is not told where the device gives nothing at all: digital silence is no room', () => {
    const room = check(new Float32Array(3 * RATE), played());
    expect(room.silence.noiseDb).toBeNull();
    expect(room.notes.map(({ aboveNoiseDb }) => aboveNoiseDb)).toEqual([null, null, null]);
    expect(kinds(room)).toEqual([]);
  });

  it('is measured without the touch at its beginning and end', () => {
    const touched = noise(3, 0.001);
    for (const at of [200, touched.length - 400]) touched.fill(0.5, at, at + 100);
    expect(measureSilence(audio(touched)).noiseDb).toBeCloseTo(-57, 0);
  });

  it('is named where mains hum is in it', () => {
    const hum = noise(3, 0.0003).map(
      (value, i) =>
        value + 0.01 * (Math.sin((2 * Math.PI * 50 * i) / RATE) + Math.sin((2 * Math.PI * 150 * i) / RATE)),
    );
    expect(measureSilence(audio(hum)).hum?.mainsHz).toBe(50);
    expect(measureSilence(audio(noise(3, 0.001))).hum).toBeNull();
  });
});

describe('a low, a middle and a high note in it', () => {
  it('heard well in a quiet room: nothing to change, and the piano is known', () => {
    const room = check(noise(3, 0.0002), played(1, 0.0002));
    expect(kinds(room)).toEqual([]);
    expect(room.notes.map(({ midi }) => midi)).toEqual([41, 60, 79]);
    expect(Math.abs(room.piano!.tuningCents.value + 18)).toBeLessThan(4);
  });

  it.each([
    ['a loud room', noise(3, 0.03), played(1, 0.03), 'noise'],
    ['a piano far away', noise(3, 0.0004), played(0.01, 0.0004), 'far'],
    ['nobody playing', noise(3, 0.0004), noise(5, 0.0004), 'no-notes'],
    [
      'a piano too loud for the microphone',
      noise(3, 0.0004),
      played(6, 0.0004).map((value) => Math.max(-1, Math.min(1, value))),
      'clipping',
    ],
  ] as const)('%s is found', (_, silence, sound, kind) => {
    const room = check(silence, sound);
    expect(kinds(room)).toContain(kind);
  });
});
