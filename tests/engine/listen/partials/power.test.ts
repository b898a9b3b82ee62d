import { expect, it } from 'vitest';
import { PowerSpectrum } from '../../../../src/engine/base/fft.ts';
import { hann } from '../../../../src/engine/base/windows.ts';
import { WindowedPower } from '../../../../src/engine/listen/partials/power.ts';
import { createRandom } from '../../../support/random.ts';

it.each([
  ['wasm', 882, 4096],
  ['wasm', 4096, 4096],
  ['wasm', 8192, 8192],
  ['wasm', 500, 512],
  ['plain', 2205, 4096],
] as const)(
  'a power spectrum (%s, %i samples) is that of fft.js, one window after the other',
  (kind, length, size) => {
    const random = createRandom(length);
    const samples = Float64Array.from(
      { length: size },
      (_, i) => Math.sin(0.3 * i) + random.uniform(-0.1, 0.1),
    );
    const power = new WindowedPower(size, kind);
    const seen = new Float32Array(size / 2);
    const windows = [300, length].map((count) => power.window(String(count), () => hann(count)));
    for (const one of windows) power.measure(samples, one, seen);
    const wanted = new PowerSpectrum(size).measure(samples, hann(length));
    const strongest = Math.max(...wanted);
    seen.forEach((value, bin) => expect(Math.abs(value - wanted[bin]!)).toBeLessThan(1e-6 * strongest));
    expect(strongest).toBeGreaterThan(0.2);
  },
);
