import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convolver, fft } from './fft.ts';
import { noiseOf } from './home/noise.ts';
import { roomResponse } from './home/room.ts';
import { OTHER_SOUNDS, otherSound } from './other-sounds.ts';
import { createRandom } from './random.ts';
import { render, SAMPLE_RATE_HZ } from './render.ts';

function power(signal: ArrayLike<number>): number {
  let sum = 0;
  for (let index = 0; index < signal.length; index++) sum += signal[index]! ** 2;
  return sum / signal.length;
}

describe('the transform', () => {
  it('equals the sum that defines it', () => {
    const size = 16;
    const random = createRandom(1);
    const input = Array.from({ length: size }, () => random.normal(1));
    const real = Float64Array.from(input);
    const imaginary = new Float64Array(size);
    fft(real, imaginary);
    for (let bin = 0; bin < size; bin++) {
      const angle = (index: number): number => (-2 * Math.PI * bin * index) / size;
      expect(real[bin]).toBeCloseTo(
        input.reduce((sum, x, n) => sum + x * Math.cos(angle(n)), 0),
        9,
      );
      expect(imaginary[bin]).toBeCloseTo(
        input.reduce((sum, x, n) => sum + x * Math.sin(angle(n)), 0),
        9,
      );
    }
  });

  it('convolves as the definition does', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 1, maxLength: 60 }),
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 1, maxLength: 9 }),
        (signal, kernel) => {
          const result = convolver(Float64Array.from(kernel))(Float64Array.from(signal));
          signal.forEach((_, at) => {
            const direct = kernel.reduce((sum, weight, back) => sum + weight * (signal[at - back] ?? 0), 0);
            expect(result[at]).toBeCloseTo(direct, 9);
          });
        },
      ),
    );
  });
});

describe('chance', () => {
  it('has the mean and the spread that it was asked for', () => {
    const random = createRandom(42);
    const drawn = Array.from({ length: 20_000 }, () => random.normal(3));
    const mean = drawn.reduce((sum, value) => sum + value, 0) / drawn.length;
    expect(Math.abs(mean)).toBeLessThan(0.08);
    expect(Math.sqrt(power(drawn))).toBeCloseTo(3, 1);
  });
});

describe('a room', () => {
  it.each([
    [0.2, 10],
    [0.5, 0],
    [1.2, -3],
  ])('of %f s keeps its direct sound %i dB above the rest', (decaySec, directDb) => {
    const response = roomResponse({ decaySec, directDb }, SAMPLE_RATE_HZ, createRandom(1));
    expect(response[0]).toBe(1);
    const rest = response.subarray(1).reduce((sum, value) => sum + value * value, 0);
    expect(-10 * Math.log10(rest)).toBeCloseTo(directDb, 6);
  });

  it.each([0.3, 0.8])('of %f s decays by 60 dB in that time', (decaySec) => {
    // Schroeder's backward integration (1965), read from −5 to −25 dB as ISO 3382 does for T20.
    const response = roomResponse({ decaySec, directDb: 0 }, SAMPLE_RATE_HZ, createRandom(2));
    const left = new Float64Array(response.length);
    for (let index = response.length - 2; index > 0; index--)
      left[index] = left[index + 1]! + response[index]! ** 2;
    const from = Math.round(0.05 * SAMPLE_RATE_HZ);
    const fallTo = (db: number): number =>
      left.findIndex((value, index) => index >= from && value < left[from]! * 10 ** (db / 10)) /
      SAMPLE_RATE_HZ;
    const t20 = 3 * (fallTo(-25) - fallTo(-5));
    expect(t20 / decaySec).toBeGreaterThan(0.7);
    expect(t20 / decaySec).toBeLessThan(1.1);
  });
});

describe('noise', () => {
  it.each(['pink', 'hum', 'speech', 'dishes', 'metronome'] as const)(
    'of the kind %s is as far below the playing as asked',
    async (kind) => {
      const spec = {
        seed: 9,
        piano: 'test',
        exercise: { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 1 },
      } as const;
      const quiet = await render({ ...spec, home: { noises: [], room: null } });
      const noisy = await render({ ...spec, home: { noises: [{ kind, belowDb: 20 }], room: null } });
      const scale = 10 ** ((noisy.truth.notes[0]!.levelDb - quiet.truth.notes[0]!.levelDb) / 20);
      const difference = noisy.channels[0]!.map((value, index) => value - scale * quiet.channels[0]![index]!);
      const notes = quiet.truth.notes;
      const playing = quiet.channels[0]!.subarray(
        notes[0]!.timeSec * SAMPLE_RATE_HZ,
        (notes.at(-1)!.timeSec + 0.3) * SAMPLE_RATE_HZ,
      );
      const belowDb = 10 * Math.log10((power(playing) * scale ** 2) / power(difference));
      expect(belowDb).toBeCloseTo(20, 1);
    },
  );

  it('called pink has equal power in every octave, within 1.5 dB', () => {
    const size = 2 ** 18;
    const real = noiseOf('pink', size, SAMPLE_RATE_HZ, createRandom(3), 60);
    const imaginary = new Float64Array(size);
    fft(real, imaginary);
    const octaves = [125, 250, 500, 1000, 2000, 4000, 8000].map((freqHz) => {
      let sum = 0;
      for (
        let bin = Math.round((freqHz / SAMPLE_RATE_HZ) * size);
        bin < (2 * freqHz * size) / SAMPLE_RATE_HZ;
        bin++
      )
        sum += real[bin]! ** 2 + imaginary[bin]! ** 2;
      return 10 * Math.log10(sum);
    });
    expect(Math.max(...octaves) - Math.min(...octaves)).toBeLessThan(1.5);
  });
});

describe('other sounds', () => {
  it.each(OTHER_SOUNDS.filter((kind) => kind !== 'silence'))(
    '%s sounds, at −6 dB, and is the same again',
    (kind) => {
      const { channels } = otherSound(kind, 2, 1);
      const peak = channels[0]!.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      expect(peak).toBeCloseTo(0.5, 6);
      expect(power(channels[0]!)).toBeGreaterThan(1e-6);
      const again = otherSound(kind, 2, 1).channels[0]!;
      expect(channels[0]!.every((value, index) => value === again[index])).toBe(true);
    },
  );

  it('silence is silent', () => {
    expect(power(otherSound('silence', 1, 1).channels[0]!)).toBe(0);
  });
});
