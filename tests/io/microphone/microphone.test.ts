import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MicrophoneError, microphoneError } from '../../../src/io/microphone/errors.ts';
import { LevelMeter } from '../../../src/io/microphone/level.ts';
import { Tape } from '../../../src/io/microphone/tape.ts';
import { tellTrouble } from '../../../src/io/troubles/index.ts';
import { GapWatch, happened } from '../../../src/io/microphone/troubles.ts';

const HZ = 48_000;

const block = (length: number, of: (i: number) => number): Float32Array =>
  Float32Array.from({ length }, (_, i) => of(i));

describe('the tape', () => {
  const tapeOf = (pastFrames: number) => new Tape({ channels: 2, reelFrames: 100, pastFrames });

  it('gives every sample once, in order, whatever the blocks', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 300 }), { minLength: 1, maxLength: 20 }),
        fc.nat(500),
        fc.nat(500),
        (lengths, from, length) => {
          const tape = tapeOf(10_000);
          let next = 0;
          for (const frames of lengths) {
            const samples = block(frames, (i) => next + i);
            tape.push([samples, samples.map((value) => -value)], frames);
            next += frames;
          }
          const begin = Math.min(from, next);
          const end = Math.min(from + length, next);
          expect(tape.end).toBe(next);
          const [left, right] = tape.take(from, from + length);
          expect(left).toEqual(block(end - begin, (i) => begin + i));
          if (left!.some((value) => value !== 0)) expect(right).toEqual(left!.map((value) => -value));
        },
      ),
    );
  });

  it('keeps the past it was asked for, and no more than a reel beyond', () => {
    const tape = tapeOf(300);
    for (let i = 0; i < 1000; i++) tape.push([Float32Array.of(i), Float32Array.of(i)], 1);
    const [kept] = tape.take(0, 1000);
    expect(kept!.length).toBeGreaterThanOrEqual(300);
    expect(kept!.length).toBeLessThanOrEqual(401);
    expect(kept!.at(-1)).toBe(999);
  });

  it('keeps everything since its mark, until the mark is taken away', () => {
    const tape = tapeOf(100);
    const push = (count: number): void => {
      for (let i = 0; i < count; i++) tape.push([Float32Array.of(tape.end), Float32Array.of(tape.end)], 1);
    };
    push(250);
    tape.keepFrom(180);
    push(1000);
    expect(tape.take(180, 1250)[0]).toEqual(block(1070, (i) => 180 + i));
    tape.keepFrom(null);
    push(300);
    expect(tape.take(0, 1250)[0]!.length).toBe(0);
    expect(tape.take(0, 1550)[0]!.at(-1)).toBe(1549);
  });

  it('is one channel where the browser made two of one', () => {
    const tape = tapeOf(1000);
    tape.push([Float32Array.of(1, 2), Float32Array.of(1, 2)], 2);
    expect(tape.take(0, 2)).toEqual([Float32Array.of(1, 2)]);
    tape.push([Float32Array.of(3), Float32Array.of(4)], 1);
    expect(tape.take(0, 3)).toEqual([Float32Array.of(1, 2, 3), Float32Array.of(1, 2, 4)]);
  });

  it('takes only the frames of a block that count', () => {
    const tape = tapeOf(1000);
    tape.push([Float32Array.of(1, 2, 9), Float32Array.of(1, 2, 9)], 2);
    expect(tape.take(0, 3)).toEqual([Float32Array.of(1, 2)]);
  });

  it('copies: a block used again changes nothing', () => {
    const tape = tapeOf(1000);
    const samples = Float32Array.of(1, 2);
    tape.push([samples, samples], 2);
    samples.fill(7);
    expect(tape.take(0, 2)).toEqual([Float32Array.of(1, 2)]);
  });
});

describe('the level', () => {
  const tone = (amplitude: number, length = 480): Float32Array =>
    block(length, (i) => amplitude * Math.sin((2 * Math.PI * 1_000 * i) / HZ));
  const push = (meter: LevelMeter, samples: Float32Array, times = 1): void => {
    for (let i = 0; i < times; i++) meter.push([samples, samples], samples.length);
  };

  it('of a sine at half of full scale is −6.02 dB peak and −9.03 dB RMS (closed form: 20·log10 of 1/2 and 1/√8)', () => {
    const meter = new LevelMeter(HZ);
    push(meter, tone(0.5), 10);
    expect(meter.level().peakDb).toBeCloseTo(-6.02, 2);
    expect(meter.level().rmsDb).toBeCloseTo(-9.03, 2);
    expect(meter.level().clipped).toBe(false);
  });

  it('of silence is −120 dB, and of nothing too', () => {
    const silent = { rmsDb: -120, peakDb: -120, heldPeakDb: -120, clipped: false };
    const meter = new LevelMeter(HZ);
    expect(meter.level()).toEqual(silent);
    push(meter, new Float32Array(480), 10);
    expect(meter.level()).toEqual(silent);
  });

  it('forgets the moment before the last 100 ms, holds the peak for two seconds', () => {
    const meter = new LevelMeter(HZ);
    push(meter, tone(0.5));
    push(meter, tone(0.05), 100);
    expect(meter.level().peakDb).toBeCloseTo(-26.02, 2);
    expect(meter.level().heldPeakDb).toBeCloseTo(-6.02, 2);
    push(meter, tone(0.05), 110);
    expect(meter.level().heldPeakDb).toBeCloseTo(-26.02, 2);
  });

  it('remembers clipping for a second', () => {
    const meter = new LevelMeter(HZ);
    push(
      meter,
      tone(1.2).map((value) => Math.max(-1, Math.min(1, value))),
    );
    push(meter, tone(0.1), 99);
    expect(meter.level().clipped).toBe(true);
    push(meter, tone(0.1), 2);
    expect(meter.level().clipped).toBe(false);
  });
});

describe('sound lost on the way', () => {
  /** Blocks of 10 ms for `seconds`, each late by chance; `lostAt`: so many seconds of sound never came. */
  function lossesOf(options: { seconds: number; lost?: { atSec: number; sec: number }; skewPpm?: number }) {
    const watch = new GapWatch(HZ);
    const losses: number[] = [];
    for (let i = 0; i < options.seconds * 100; i++) {
      const clockSec = i / 100 + (i % 7) * 0.004 + (i % 50 === 0 ? 0.2 : 0);
      const lost = options.lost !== undefined && i / 100 >= options.lost.atSec ? options.lost.sec : 0;
      const frames = (i / 100 - lost) * (1 + (options.skewPpm ?? 0) * 1e-6) * HZ;
      const lostSec = watch.look(frames, clockSec);
      if (lostSec > 0) losses.push(lostSec);
    }
    return losses;
  }

  it('is none while blocks come late and in bunches, nor where the sound card runs slow by 200 ppm for half an hour', () => {
    expect(lossesOf({ seconds: 60 })).toEqual([]);
    expect(lossesOf({ seconds: 1800, skewPpm: -200 })).toEqual([]);
  });

  it('is told once, with its length', () => {
    const losses = lossesOf({ seconds: 30, lost: { atSec: 11, sec: 0.3 } });
    expect(losses).toHaveLength(1);
    expect(losses[0]).toBeCloseTo(0.3, 2);
  });

  it.each([
    ['gap', 0.25, /About 0\.25 s of sound were lost/],
    ['gone', 0, /Connect it again/],
    ['silenced', 0, /Another app has taken the microphone/],
    ['asleep', 0, /Touch the page/],
    ['back', 0, /goes on/],
  ] as const)('%s is said plainly', (kind, lostSec, message) => {
    expect(tellTrouble(happened(kind, lostSec).trouble)).toMatch(message);
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
    expect(error.trouble).toEqual({ trouble: `microphone-${kind}` });
    expect(error.message).toMatch(message);
  });

  it('sound that never starts is told as it is', () => {
    const mute = new MicrophoneError('mute');
    expect(microphoneError(mute)).toBe(mute);
    expect(mute.message).toMatch(/loudspeaker or headphones/);
  });
});
