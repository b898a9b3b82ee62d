import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { retime } from '../../../src/io/playback/retime.ts';
import { timeMap } from '../../../src/io/playback/timemap.ts';

const HZ = 44_100;
const sine = (freqHz: number, sec: number, amplitude = 0.5) =>
  Float32Array.from({ length: sec * HZ }, (_, i) => amplitude * Math.sin((2 * Math.PI * freqHz * i) / HZ));
const atSpeed = (sound: Float32Array, speed: number) =>
  retime([sound], HZ, { attacks: [], lengthSec: sound.length / HZ / speed, speed })[0]!;

/** A struck string at each time: a click-free rise of 2 ms, three partials, falling by half in 0.3 s. */
function struck(timesSec: readonly number[], lengthSec: number, freqHz = 220): Float32Array {
  const sound = new Float32Array(Math.round(lengthSec * HZ));
  for (const at of timesSec)
    for (let i = Math.round(at * HZ); i < sound.length; i++) {
      const sec = i / HZ - at;
      const level = 0.2 * Math.min(1, sec / 0.002) * 0.5 ** (sec / 0.3);
      for (const partial of [1, 2, 3])
        sound[i]! += (level / partial) * Math.sin(2 * Math.PI * partial * freqHz * sec);
    }
  return sound;
}

/** Frequency by rising zero crossings: closed form, no spectrum needed. */
function crossingsHz(sound: Float32Array): number {
  const at: number[] = [];
  for (let i = 1; i < sound.length; i++) {
    const [a, b] = [sound[i - 1]!, sound[i]!];
    if (a < 0 && b >= 0) at.push(i - b / (b - a));
  }
  return ((at.length - 1) * HZ) / (at.at(-1)! - at[0]!);
}

describe('another speed', () => {
  it.each([0.5, 0.6, 0.75, 0.9, 1.5])('%f keeps the pitch and changes the length', (speed) => {
    for (const freqHz of [82.41, 440, 1_760]) {
      const out = atSpeed(sine(freqHz, 1), speed);
      expect(out.length).toBe(Math.round(HZ / speed));
      const steady = out.subarray(0, Math.floor(out.length * 0.9));
      expect(1200 * Math.log2(crossingsHz(steady) / freqHz), `${freqHz} Hz, cents`).toBeCloseTo(0, 0);
    }
  });

  it('keeps a steady tone steady: no level lost where pieces join', () => {
    const out = atSpeed(sine(220, 1), 0.5);
    for (let from = 4_410; from < 1.7 * HZ; from += 2_205) {
      const peak = Math.max(...out.subarray(from, from + 2_205).map(Math.abs));
      expect(20 * Math.log10(peak / 0.5)).toBeGreaterThan(-1.5);
      expect(20 * Math.log10(peak / 0.5)).toBeLessThan(0.5);
    }
  });

  it('1 gives the sound itself, silence and all', () => {
    const sound = struck([0.2, 0.55], 1);
    expect(atSpeed(sound, 1)).toEqual(sound);
  });

  it('moves all channels together', () => {
    const [left, right] = retime([sine(440, 0.5), sine(440, 0.5)], HZ, {
      attacks: [],
      lengthSec: 1,
      speed: 0.5,
    });
    expect(right).toEqual(left);
  });
});

describe('attacks moved', () => {
  it('are copied sample for sample: from 3 ms before to 30 ms after', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.15, max: 0.5, noNaN: true }), { minLength: 3, maxLength: 6 }),
        fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), { minLength: 6, maxLength: 6 }),
        (gaps, changes) => {
          let fromSec = 0.2;
          let toSec = 0.2;
          const attacks = gaps.map((gap, i) => {
            fromSec += gap;
            toSec += gap * (1 + changes[i]!);
            return { fromSec, lastSec: fromSec, toSec };
          });
          const sound = struck(
            attacks.map((attack) => attack.fromSec),
            fromSec + 0.5,
          );
          const [out] = retime([sound], HZ, { attacks, lengthSec: toSec + 0.5, speed: 1 });
          for (const attack of attacks) {
            const [from, to] = [attack.fromSec, attack.toSec].map((sec) => Math.round(sec * HZ));
            for (let i = -0.003 * HZ; i < 0.03 * HZ; i += 7) {
              const k = Math.round(i);
              expect(out![to! + k]).toBeCloseTo(sound[from! + k]!, 6);
            }
          }
        },
      ),
      { numRuns: 20 },
    );
  });

  it('that stay where they are leave the sound as it is', () => {
    const times = [0.3, 0.5, 0.8];
    const sound = struck(times, 1.2);
    const attacks = times.map((sec) => ({ fromSec: sec, lastSec: sec, toSec: sec }));
    expect(retime([sound], HZ, { attacks, lengthSec: 1.2, speed: 1 })[0]).toEqual(sound);
  });

  it('that would change places stay in order, and nothing breaks', () => {
    const attacks = [0.3, 0.5, 0.8].map((sec, i) => ({ fromSec: sec, lastSec: sec, toSec: 0.8 - 0.2 * i }));
    const [out] = retime([struck([0.3, 0.5, 0.8], 1.2)], HZ, { attacks, lengthSec: 1.2, speed: 1 });
    expect(out!.every(Number.isFinite)).toBe(true);
  });
});

describe('a map of time', () => {
  it('leads there and back', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            gap: fc.double({ min: 0.01, max: 2, noNaN: true }),
            heard: fc.double({ min: 0.01, max: 2, noNaN: true }),
          }),
        ),
        fc.double({ min: -1, max: 20, noNaN: true }),
        (steps, sec) => {
          let [fromSec, toSec] = [0, 0];
          const map = timeMap(
            steps.map(({ gap, heard }) => ({ fromSec: (fromSec += gap), toSec: (toSec += heard) })),
          );
          expect(map.toRecording(map.toHeard(sec))).toBeCloseTo(sec, 6);
        },
      ),
    );
  });
});
