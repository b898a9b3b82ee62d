import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listen } from '../../../src/engine/listen/index.ts';
import type { FindingKind, Heard } from '../../../src/engine/listen/index.ts';
import { playStrings } from './strings.ts';

const RATE = 22050;
const hear = (samples: Float32Array, sampleRateHz = RATE): Heard =>
  listen({ channels: [samples], sampleRateHz });
const kinds = (heard: Heard): FindingKind[] => heard.findings.map(({ kind }) => kind);
const noise = (length: number, level: number, seed = 7): Float32Array => {
  let state = seed;
  return Float32Array.from({ length }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return level * (state / 2 ** 31 - 1);
  });
};
const tune = [60, 64, 67, 72].map((midi, i) => ({ timeSec: 0.4 + 0.5 * i, midi }));

describe('poor sound is a finding, not an error', () => {
  it.each<readonly [string, Float32Array, FindingKind]>([
    ['nothing at all', new Float32Array(0), 'too-short'],
    ['a tenth of a second', noise(2205, 0.1), 'too-short'],
    ['digital silence', new Float32Array(3 * RATE), 'silence'],
    ['full-scale noise', noise(3 * RATE, 1), 'not-a-piano'],
    ['a standing voltage', new Float32Array(3 * RATE).fill(0.5), 'not-a-piano'],
    ['only samples that are no numbers', new Float32Array(3 * RATE).fill(NaN), 'processing'],
    ['playing at −50 dB', playStrings(tune, { seconds: 3, gain: 0.008 }), 'too-quiet'],
    [
      'playing cut at the rail',
      playStrings(tune, { seconds: 3, gain: 6 }).map((x) => Math.max(-1, Math.min(1, x))),
      'clipping',
    ],
  ])('%s', (_, samples, kind) => {
    const heard = hear(samples);
    expect(kinds(heard)).toContain(kind);
    for (const { detail } of heard.findings) expect(detail).toMatch(/^[A-Z0-9].*[.]$/);
  });

  it('mains hum is named with its frequency', () => {
    const played = playStrings(tune, { seconds: 4 });
    const hummed = played.map(
      (x, i) =>
        x + 0.004 * (Math.sin((2 * Math.PI * 50 * i) / RATE) + Math.sin((2 * Math.PI * 150 * i) / RATE)),
    );
    expect(hear(hummed).findings.find(({ kind }) => kind === 'hum')?.detail).toContain('50 Hz');
    expect(kinds(hear(played))).not.toContain('hum');
  });

  it('a dead and an opposed channel are named, and the notes are heard all the same', () => {
    const played = playStrings(tune, { seconds: 3 });
    for (const other of [new Float32Array(played.length), played.map((x) => -x)]) {
      const heard = listen({ channels: [other, played], sampleRateHz: RATE });
      expect(kinds(heard)).toContain('channels');
      expect(heard.notes.map(({ midi }) => midi)).toEqual(tune.map(({ midi }) => midi));
    }
  });

  it('clean playing has nothing to say', () => {
    expect(hear(playStrings(tune, { seconds: 3 })).findings).toEqual([]);
  });

  it.each([
    ['a knock', (i: number) => (i >= RATE && i < RATE + 60 ? 0.8 * Math.exp(-(i - RATE) / 20) : 0)],
    ['a click', (i: number) => (i === RATE ? 1 : 0)],
    ['hum alone', (i: number) => 0.1 * Math.sin((2 * Math.PI * 50 * i) / RATE)],
    [
      'a gliding voice',
      (i: number) => {
        const t = i / RATE;
        if (t < 1 || t > 1.8) return 0;
        const phase = 2 * Math.PI * (140 * t + 40 * (t - 1) ** 2);
        return (
          0.1 *
          Math.sin(Math.PI * ((t - 1) / 0.8)) *
          (Math.sin(phase) + 0.6 * Math.sin(2 * phase) + 0.4 * Math.sin(3 * phase))
        );
      },
    ],
  ])('%s is no note', (_, at) => {
    const bed = noise(3 * RATE, 0.0005);
    expect(hear(bed.map((x, i) => x + at(i))).notes).toEqual([]);
  });

  it('never throws, whatever the samples and the rate, and gives finite figures', () => {
    const nasty = fc.oneof(
      fc.float({ min: -1, max: 1, noNaN: true }),
      fc.constantFrom(NaN, Infinity, -Infinity, 1e30, -1e30, 0, 1, -1),
    );
    fc.assert(
      fc.property(
        fc.array(nasty, { maxLength: 400 }),
        fc.integer({ min: 1, max: 90 }),
        fc.constantFrom(8000, 22050, 44100, 192_000),
        (pattern, times, rateHz) => {
          const samples = Float32Array.from(
            { length: pattern.length * times },
            (_, i) => pattern[i % pattern.length]!,
          );
          const heard = hear(samples, rateHz);
          for (const note of heard.notes)
            expect([note.timeSec, note.cents, note.levelDb, note.confidence].every(Number.isFinite)).toBe(
              true,
            );
          expect(Number.isFinite(heard.tuning.cents)).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });
});
