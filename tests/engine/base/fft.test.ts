import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PowerSpectrum } from '../../../src/engine/base/fft.ts';
import { hann, tukey } from '../../../src/engine/base/windows.ts';

const sine = (length: number, cycles: number, amplitude = 1): Float64Array =>
  Float64Array.from({ length }, (_, i) => amplitude * Math.sin((2 * Math.PI * cycles * i) / length));

describe('a power spectrum', () => {
  it.each([
    [64, 5, 1],
    [512, 37, 0.5],
    [4096, 1000, 0.01],
  ])(
    'of %i samples reads the square of a sine of %i cycles at its bin (closed form)',
    (size, cycles, amplitude) => {
      const power = new PowerSpectrum(size).measure(sine(size, cycles, amplitude), hann(size));
      expect(power[cycles]).toBeCloseTo(amplitude ** 2, 8);
      expect(power.indexOf(Math.max(...power))).toBe(cycles);
    },
  );

  it('agrees with the sum that defines the discrete Fourier transform', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 32, maxLength: 32 }),
        (values) => {
          const samples = Float64Array.from(values);
          const flat = new Float64Array(32).fill(1);
          const power = new PowerSpectrum(32).measure(samples, flat);
          for (let bin = 0; bin <= 16; bin++) {
            let re = 0;
            let im = 0;
            samples.forEach((value, i) => {
              re += value * Math.cos((2 * Math.PI * bin * i) / 32);
              im -= value * Math.sin((2 * Math.PI * bin * i) / 32);
            });
            expect(power[bin]).toBeCloseTo((4 / 32 ** 2) * (re * re + im * im), 9);
          }
        },
      ),
    );
  });

  it('says what sizes and windows it takes', () => {
    expect(() => new PowerSpectrum(1000)).toThrow(/power of two/);
    expect(() => new PowerSpectrum(64).measure(new Float64Array(32), hann(64))).toThrow(/shorten the window/);
  });
});

describe('a Hann window', () => {
  it('has side lobes at most −31 dB beside its main lobe (Harris 1978, table I)', () => {
    const power = new PowerSpectrum(4096).measure(new Float64Array(64).fill(1), hann(64));
    const perBin = 4096 / 64;
    const beyond = power.slice(Math.round(2.1 * perBin));
    expect(10 * Math.log10(Math.max(...beyond) / power[0]!)).toBeLessThan(-31);
  });
});

describe('a Tukey window', () => {
  it('has an equivalent noise bandwidth of 1.10 bins at a taper of a quarter (Harris 1978, table I; from memory)', () => {
    const window = tukey(4000, 0.25);
    const sum = window.reduce((all, value) => all + value, 0);
    const squares = window.reduce((all, value) => all + value * value, 0);
    expect((window.length * squares) / sum ** 2).toBeCloseTo(1.1, 2);
  });
});
