import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MicrophoneError, microphoneError } from '../../../src/io/microphone/errors.ts';
import { Take } from '../../../src/io/microphone/take.ts';

const HZ = 48_000;

describe('a take', () => {
  it('is every sample between start and stop once, in order, whatever the blocks', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 300 }), { minLength: 1, maxLength: 20 }), (lengths) => {
        const take = new Take(HZ, 0);
        take.push([Float32Array.of(9, 9, 9)]);
        take.start();
        let next = 0;
        for (const length of lengths) take.push([Float32Array.from({ length }, () => next++)]);
        const [channel] = take.stop();
        expect(channel).toEqual(Float32Array.from({ length: next }, (_, i) => i));
      }),
    );
  });

  it('has the last moments before it was started, and no more than a block beyond', () => {
    const take = new Take(HZ, 0.3);
    for (let i = 0; i < 100; i++) take.push([new Float32Array(2_048).fill(i)]);
    take.start();
    const [channel] = take.stop();
    expect(channel!.length / HZ).toBeGreaterThanOrEqual(0.3);
    expect(channel!.length / HZ).toBeLessThan(0.3 + 2_048 / HZ);
    expect(channel!.at(-1)).toBe(99);
  });

  it('keeps two channels of one length when one of them comes late', () => {
    const take = new Take(HZ, 0);
    take.start();
    take.push([Float32Array.of(1, 1)]);
    take.push([Float32Array.of(2), Float32Array.of(3)]);
    expect(take.stop()).toEqual([Float32Array.of(1, 1, 2), Float32Array.of(0, 0, 3)]);
  });

  it('is one channel where the browser made two of one', () => {
    const take = new Take(HZ, 0);
    take.start();
    take.push([Float32Array.of(1, 2), Float32Array.of(1, 2)]);
    expect(take.stop()).toEqual([Float32Array.of(1, 2)]);
  });

  it('is empty without a start', () => {
    expect(new Take(HZ, 0).stop()).toEqual([]);
  });
});

describe('the level', () => {
  const tone = (amplitude: number): Float32Array =>
    Float32Array.from({ length: 4_800 }, (_, i) => amplitude * Math.sin((2 * Math.PI * 1_000 * i) / HZ));

  it('of a sine at half of full scale is −6.02 dB peak and −9.03 dB RMS (closed form: 20·log10 of 1/2 and 1/√8)', () => {
    const take = new Take(HZ, 0);
    take.push([tone(0.5)]);
    expect(take.level().peakDb).toBeCloseTo(-6.02, 2);
    expect(take.level().rmsDb).toBeCloseTo(-9.03, 2);
    expect(take.level().clipped).toBe(false);
  });

  it('of silence is −120 dB, and of nothing too', () => {
    const take = new Take(HZ, 0);
    expect(take.level()).toEqual({ rmsDb: -120, peakDb: -120, clipped: false });
    take.push([new Float32Array(4_800)]);
    expect(take.level()).toEqual({ rmsDb: -120, peakDb: -120, clipped: false });
  });

  it('remembers clipping for a second', () => {
    const take = new Take(HZ, 0);
    take.push([tone(1.2).map((value) => Math.max(-1, Math.min(1, value)))]);
    for (let i = 0; i < 9; i++) take.push([tone(0.1)]);
    expect(take.level().clipped).toBe(true);
    for (let i = 0; i < 2; i++) take.push([tone(0.1)]);
    expect(take.level().clipped).toBe(false);
    expect(take.level().peakDb).toBeCloseTo(-20, 1);
  });
});

/** Names: Media Capture and Streams (W3C), getUserMedia(). */
describe('what the browser refuses with', () => {
  it.each([
    ['NotAllowedError', 'denied', /Allow it for this page/],
    ['SecurityError', 'denied', /Allow it/],
    ['NotFoundError', 'none', /No microphone was found/],
    ['OverconstrainedError', 'none', /Connect one/],
    ['NotReadableError', 'busy', /Close that one/],
    ['AbortError', 'busy', /taken/],
    ['TypeError', 'unsupported', /over https/],
  ])('%s is told as %s', (name, kind, message) => {
    const error = microphoneError(Object.assign(new Error('?'), { name }));
    expect(error).toBeInstanceOf(MicrophoneError);
    expect(error.kind).toBe(kind);
    expect(error.message).toMatch(message);
  });
});
