import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Resampler } from '../../../../src/engine/listen/audio/resample.ts';

function resample(input: Float64Array, fromHz: number, toHz: number, block = input.length): Float64Array {
  const out: number[] = [];
  const resampler = new Resampler(fromHz, toHz, (block, length) => out.push(...block.subarray(0, length)));
  for (let i = 0; i < input.length; i += block) {
    const piece = input.slice(i, i + block);
    resampler.push(piece, piece.length);
  }
  resampler.finish();
  return Float64Array.from(out);
}

const tone = (freqHz: number, rateHz: number, seconds: number): Float64Array =>
  Float64Array.from({ length: Math.round(rateHz * seconds) }, (_, i) =>
    Math.sin((2 * Math.PI * freqHz * i) / rateHz),
  );

describe('resampling', () => {
  it.each([
    [44100, 22050, 1000],
    [48000, 22050, 4000],
    [96000, 22050, 8000],
    [192000, 22050, 440],
    [8000, 22050, 3000],
    [11025, 22050, 4000],
    [22050, 22050, 5000],
    [44056, 22050, 2000],
  ])('from %i to %i Hz keeps a tone of %i Hz in shape and place (closed form)', (fromHz, toHz, freqHz) => {
    const made = resample(tone(freqHz, fromHz, 0.3), fromHz, toHz);
    const wanted = tone(freqHz, toHz, 0.3);
    expect(Math.abs(made.length - wanted.length)).toBeLessThanOrEqual(1);
    let worst = 0;
    for (let i = 500; i < made.length - 500; i++) worst = Math.max(worst, Math.abs(made[i]! - wanted[i]!));
    expect(worst).toBeLessThan(0.01);
  });

  it('lets nothing fold back from above the new Nyquist frequency: −50 dB at least', () => {
    const made = resample(tone(13500, 44100, 0.3), 44100, 22050).slice(500, -500);
    expect(10 * Math.log10((2 * made.reduce((sum, x) => sum + x * x, 0)) / made.length)).toBeLessThan(-50);
  });

  it('does not depend on how the sound is cut into blocks, to the last bit', () => {
    const input = tone(700, 48000, 0.05);
    const whole = resample(input, 48000, 22050);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 900 }), (block) => {
        expect(resample(input, 48000, 22050, block)).toEqual(whole);
      }),
      { numRuns: 25 },
    );
  });
});
