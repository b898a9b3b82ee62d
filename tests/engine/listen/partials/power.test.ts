import { expect, it } from 'vitest';
import { PowerSpectrum } from '../../../../src/engine/base/fft.ts';
import { hann } from '../../../../src/engine/base/windows.ts';
import { WindowedPower } from '../../../../src/engine/listen/partials/power.ts';
import { createRandom } from '../../../support/random.ts';

const SIZE = 4096;

it.each([
  ['wasm', 882],
  ['wasm', 4096],
  ['plain', 2205],
] as const)(
  'a power spectrum (%s, %i samples) is that of fft.js, one window after the other',
  (kind, length) => {
    const random = createRandom(length);
    const samples = Float64Array.from(
      { length: SIZE },
      (_, i) => Math.sin(0.3 * i) + random.uniform(-0.1, 0.1),
    );
    const power = new WindowedPower(SIZE, kind);
    const seen = new Float32Array(SIZE / 2);
    const [other, window] = [power.window(hann(1024)), power.window(hann(length))];
    for (const one of [other, window]) power.measure(samples, one, seen);
    const wanted = new PowerSpectrum(SIZE).measure(samples, hann(length));
    const strongest = Math.max(...wanted);
    seen.forEach((value, bin) => expect(Math.abs(value - wanted[bin]!)).toBeLessThan(1e-6 * strongest));
    expect(strongest).toBeGreaterThan(0.2);
  },
);
