import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FeatureMaker } from '../../../../src/engine/listen/network/features.ts';
import { plainKernel, wasmKernel } from '../../../../src/engine/listen/network/kernel/index.ts';
import { BITS, viewPlaces } from '../../../../src/engine/listen/network/layers.ts';
import { logBins } from '../../../../src/engine/listen/network/log-bins.ts';
import { Network } from '../../../../src/engine/listen/network/network.ts';
import { TRAINED_NETWORK } from '../../../../src/engine/listen/network/weights.ts';
import { referenceSound, sourceOf } from './sound.ts';

/**
 * Features and outputs of a sound of known formula, by an implementation in numpy that shares nothing with this one:
 * src/training/listener/reference.py, written by export.py beside it.
 */
interface Reference {
  readonly cents: number;
  /** samples 0, 12128 and 20000 of the sound */
  readonly samples: readonly number[];
  readonly frames: readonly {
    readonly frame: number;
    /** of each view, from −1.5 (−90 dB) to 3 (a full-scale sine) */
    readonly features: readonly (readonly number[])[];
    readonly outputs: readonly number[];
    readonly outputsOfKeys24To63: readonly number[];
  }[];
}

const REFERENCE = JSON.parse(
  readFileSync(resolve(import.meta.dirname, 'reference.json'), 'utf8'),
) as Reference;
const { shape } = TRAINED_NETWORK;
const SOUND = referenceSound();

/** what the network takes off every feature */
const MIDDLE = 1.5;
const ONE = 2 ** BITS.features;
/** half a step of a feature (1 / 4096), the last digit of the reference, and the error of the kernel's logarithm */
const FEATURE_TOLERANCE = 0.0003;
/**
 * Logits, frames, sixths of a dB. Weights are float16 and values int16 here: of outputs up to 21 that leaves 0.18, where the onset is
 * sure; over renders no probability is off by more than 0.017.
 */
const OUTPUT_TOLERANCE = 0.2;

describe('the features', () => {
  it('are made from the same sound as the reference', () => {
    [0, 12_128, 20_000].forEach((at, index) => expect(SOUND[at]).toBeCloseTo(REFERENCE.samples[index]!, 8));
  });

  it.each(['wasm', 'plain'] as const)('equal those of numpy with the %s kernel', (kind) => {
    const kernel = kind === 'wasm' ? wasmKernel()! : plainKernel();
    const maker = new FeatureMaker(kernel, shape);
    maker.listenTo(sourceOf(SOUND), REFERENCE.cents);
    for (const { frame, features } of REFERENCE.frames) {
      const means = maker.make(frame, 1);
      expect(features.length).toBe(shape.views.length);
      features.forEach((wanted, view) => {
        // Two views stand side by side where a key looks at the same bins of both.
        const at = viewPlaces(shape)[view]?.at ?? viewPlaces(shape)[view - 1]!.at + 2;
        const row = new Int16Array(kernel.memory, maker.row + at, 2 * shape.bins).filter(
          (_, i) => i % 2 === 0,
        );
        expect(wanted.length).toBe(shape.bins);
        const worst = Math.max(...wanted.map((value, bin) => Math.abs(row[bin]! / ONE - (value - MIDDLE))));
        expect(worst).toBeLessThan(FEATURE_TOLERANCE);
        const last = wanted.slice(Math.floor((7 * shape.bins) / shape.bands));
        const mean = last.reduce((sum, value) => sum + value - MIDDLE, 0) / last.length;
        expect(Math.abs(means[(view + 1) * shape.bands - 1]! / ONE - mean)).toBeLessThan(FEATURE_TOLERANCE);
      });
    }
  });

  it('weigh each log bin to 1, about its frequency', () => {
    // C1 is 32.703 Hz, A4 440 Hz, C8 4186.01 Hz in equal temperament (ISO 16:1975; table values from memory)
    const size = 4096;
    const { first, starts, weights } = logBins(shape, size, 0);
    const centreHz = (bin: number): number => {
      let centre = 0;
      for (let i = starts[bin]!; i < starts[bin + 1]!; i++)
        centre += weights[i]! * (first[bin]! + i - starts[bin]!) * (shape.rateHz / size);
      return centre;
    };
    for (const [midi, hz] of [
      [24, 32.703],
      [69, 440],
      [108, 4186.01],
    ] as const)
      expect(Math.abs(centreHz(shape.binsBelow + 3 * (midi - shape.lowestMidi)) - hz)).toBeLessThan(2.7);
    const sums = Array.from(first, (_, bin) =>
      weights.subarray(starts[bin], starts[bin + 1]).reduce((sum, weight) => sum + weight, 0),
    );
    expect(sums.every((sum) => sum === 0 || Math.abs(sum - 1) < 1e-12)).toBe(true);
  });

  it('on a tuning five semitones higher are those of five keys higher, bin by bin', () => {
    const higher = 5 * (shape.binsPerOctave / 12);
    for (const size of new Set(shape.views.map((view) => view.size))) {
      const transposed = logBins(shape, size, 500);
      const plain = logBins(shape, size, 0);
      for (let bin = 0; bin + higher < shape.bins; bin++) {
        expect(transposed.first[bin]).toBe(plain.first[bin + higher]);
        const own = transposed.weights.subarray(transposed.starts[bin], transposed.starts[bin + 1]);
        const theirs = plain.weights.subarray(plain.starts[bin + higher], plain.starts[bin + higher + 1]);
        expect(own.length).toBe(theirs.length);
        own.forEach((weight, index) => expect(weight).toBeCloseTo(theirs[index]!, 9));
      }
    }
  });

  it('refuse a tuning of more than six semitones', () => {
    expect(() => logBins(shape, 4096, 630)).toThrow(/cents=630 is outside ±600/);
  });
});

describe('the network', () => {
  const whole = { source: sourceOf(SOUND), cents: REFERENCE.cents, gain: 1, lowMidi: 24, highMidi: 103 };

  it.each(['wasm', 'plain'] as const)('says what numpy says with the %s kernel', (kind) => {
    const network = new Network(TRAINED_NETWORK, kind);
    expect(network.kernelKind).toBe(kind);
    network.listenTo(whole);
    for (const { frame, outputs } of REFERENCE.frames)
      expect(worst(network, frame, 24, outputs)).toBeLessThan(OUTPUT_TOLERANCE);
    network.listenTo({ ...whole, lowMidi: 48, highMidi: 87 });
    for (const { frame, outputsOfKeys24To63 } of REFERENCE.frames)
      expect(worst(network, frame, 48, outputsOfKeys24To63)).toBeLessThan(OUTPUT_TOLERANCE);
  });

  it('has something to say in the reference: an onset surer than 0.9, and a frame with none surer than 0.01', () => {
    const onsets = REFERENCE.frames.map(({ outputs }) =>
      Math.max(...outputs.filter((_, index) => index % 4 === 0).map((logit) => 1 / (1 + Math.exp(-logit)))),
    );
    expect(Math.max(...onsets)).toBeGreaterThan(0.9);
    expect(Math.min(...onsets)).toBeLessThan(0.01);
  });

  it('says the same whatever was asked before', () => {
    const inOrder = new Network(TRAINED_NETWORK);
    const atRandom = new Network(TRAINED_NETWORK);
    const first = REFERENCE.frames[0]!.frame;
    const frames = Array.from({ length: 40 }, (_, index) => first - 10 + index);
    const ask = (network: Network, order: readonly number[]): Map<number, number> => {
      network.listenTo(whole);
      return new Map(order.map((frame) => [frame, network.output(frame, 57, 0)]));
    };
    const straight = ask(inOrder, frames);
    const shuffled = ask(
      atRandom,
      [...frames].sort((a, b) => ((a * 17) % 41) - ((b * 17) % 41)),
    );
    for (const frame of frames) expect(shuffled.get(frame)).toBe(straight.get(frame));
  });

  it('refuses a range without keys', () => {
    expect(() => new Network(TRAINED_NETWORK).listenTo({ ...whole, lowMidi: 110, highMidi: 120 })).toThrow(
      /lowMidi=110 to highMidi=120 holds no key of 24\.\.103/,
    );
  });
});

function worst(network: Network, frame: number, lowMidi: number, wanted: readonly number[]): number {
  const which = [0, 1, 2, 3] as const;
  return Math.max(
    ...wanted.map((value, index) =>
      Math.abs(network.output(frame, lowMidi + Math.floor(index / 4), which[index % 4]!) - value),
    ),
  );
}
