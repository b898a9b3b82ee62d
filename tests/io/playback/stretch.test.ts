import { describe, expect, it } from 'vitest';
import { stretch } from '../../../src/io/playback/stretch.ts';

const HZ = 44_100;
const sine = (freqHz: number, sec: number, amplitude = 0.5) =>
  Float32Array.from({ length: sec * HZ }, (_, i) => amplitude * Math.sin((2 * Math.PI * freqHz * i) / HZ));

/** Frequency by rising zero crossings: closed form, no spectrum needed. */
function crossingsHz(sound: Float32Array): number {
  const at: number[] = [];
  for (let i = 1; i < sound.length; i++) {
    const [a, b] = [sound[i - 1]!, sound[i]!];
    if (a < 0 && b >= 0) at.push(i - b / (b - a));
  }
  return ((at.length - 1) * HZ) / (at.at(-1)! - at[0]!);
}

describe('stretch', () => {
  it.each([0.5, 0.75, 1.5])('at speed %f keeps the pitch and changes the length', (speed) => {
    for (const freqHz of [82.41, 440, 1_760]) {
      const [out] = stretch([sine(freqHz, 1)], HZ, speed);
      expect(out!.length).toBe(Math.round(HZ / speed));
      const steady = out!.subarray(0, Math.floor(out!.length * 0.9));
      expect(1200 * Math.log2(crossingsHz(steady) / freqHz), `${freqHz} Hz, cents`).toBeCloseTo(0, 0);
    }
  });

  it('keeps a steady tone steady: no level lost where pieces join', () => {
    const [out] = stretch([sine(220, 1)], HZ, 0.5);
    for (let from = 4_410; from < 1.7 * HZ; from += 2_205) {
      const peak = Math.max(...out!.subarray(from, from + 2_205).map(Math.abs));
      expect(20 * Math.log10(peak / 0.5)).toBeGreaterThan(-1.5);
      expect(20 * Math.log10(peak / 0.5)).toBeLessThan(0.5);
    }
  });

  it('puts an onset where its time is, to 30 ms', () => {
    const sound = new Float32Array(HZ);
    sound.set(sine(440, 0.5), HZ / 2);
    const [out] = stretch([sound], HZ, 0.5);
    const onset = out!.findIndex((value) => Math.abs(value) > 0.1) / HZ;
    expect(Math.abs(onset - 1)).toBeLessThan(0.03);
  });

  it('at speed 1 and of a very short sound gives the sound itself', () => {
    const sound = sine(440, 0.3);
    expect(stretch([sound], HZ, 1)).toEqual([sound]);
    const short = sine(440, 0.02);
    expect(stretch([short], HZ, 0.5)).toEqual([short]);
  });

  it('moves all channels together', () => {
    const [left, right] = stretch([sine(440, 0.5), sine(440, 0.5)], HZ, 0.5);
    expect(right).toEqual(left);
  });
});
