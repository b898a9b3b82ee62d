import { describe, expect, it } from 'vitest';
import { createAudioStream, RATE_HZ } from '../../../../src/engine/listen/audio/index.ts';
import type { AudioFacts } from '../../../../src/engine/listen/audio/index.ts';

function pass(
  channels: readonly Float32Array[],
  sampleRateHz = RATE_HZ,
): { out: number[]; facts: AudioFacts } {
  const out: number[] = [];
  const stream = createAudioStream({ sampleRateHz, channels: channels.length }, (block, length) =>
    out.push(...block.subarray(0, length)),
  );
  stream.push(channels);
  return { facts: stream.finish(), out };
}

const tone = (amplitude: number, length = 22050): Float32Array =>
  Float32Array.from({ length }, (_, i) => amplitude * Math.sin(0.13 * i));
const power = (samples: readonly number[]): number =>
  samples.reduce((sum, x) => sum + x * x, 0) / samples.length;

describe('the channels', () => {
  it('that cancel each other are not added: the sound keeps its power', () => {
    const left = tone(0.5);
    const { out, facts } = pass([left, left.map((x) => -x)]);
    expect(power(out)).toBeCloseTo(0.125, 3);
    expect(facts.channels.sumDb).toBeLessThan(-60);
  });

  it('of which one is dead give the living one', () => {
    const { out, facts } = pass([new Float32Array(22050), tone(0.5)]);
    expect(power(out.slice(8192))).toBeCloseTo(0.125, 3);
    expect(facts.channels.weakestDb).toBeLessThan(-60);
  });

  it('with samples that are no numbers are read as silence there, and the samples are counted', () => {
    const broken = tone(0.5);
    broken[10] = NaN;
    broken[11] = Infinity;
    const { out, facts } = pass([broken]);
    expect(out.every(Number.isFinite)).toBe(true);
    expect(facts.badSamples).toBe(2);
  });

  it('are refused when they are none, or differ in length', () => {
    const stream = createAudioStream({ sampleRateHz: 44100, channels: 2 }, () => undefined);
    expect(() => createAudioStream({ sampleRateHz: 44100, channels: 0 }, () => undefined)).toThrow(
      /channels=0/,
    );
    expect(() => createAudioStream({ sampleRateHz: 12, channels: 1 }, () => undefined)).toThrow(
      /sampleRateHz=12/,
    );
    expect(() => stream.push([new Float32Array(3), new Float32Array(4)])).toThrow(/differ in length/);
    expect(() => stream.push([new Float32Array(3)])).toThrow(/announced/);
  });
});

describe('clipping', () => {
  it('is seen where tops are cut flat, and not in a clean tone', () => {
    const loud = tone(1.6).map((x) => Math.max(-1, Math.min(1, x)));
    expect(pass([loud]).facts.rail.clippedRuns).toBeGreaterThan(100);
    expect(pass([tone(0.99)]).facts.rail.clippedRuns).toBe(0);
  });

  it('is seen at any rail: a phone may cut at half of full scale', () => {
    const cut = tone(1).map((x) => Math.max(-0.5, Math.min(0.5, x)));
    expect(pass([cut]).facts.rail.clippedRuns).toBeGreaterThan(100);
  });
});
