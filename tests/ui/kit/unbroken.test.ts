import { expect, it } from 'vitest';
import { unbroken } from '../../../src/ui/kit/unbroken.ts';

it.each([
  ['both times, by 116 ms; the rest is even', 'both times, by 116_ms; the rest is even'],
  ['varies by 9 %; up to 4.7 % is even', 'varies by 9_%; up to 4.7_% is even'],
  ['neither surely first (± 28 ms), 4.1 % ± 0.4', 'neither surely first (±_28_ms), 4.1_% ±_0.4'],
  ['only A♭–C, ♩ = 59, two notes', 'only A♭–C, ♩_=_59, two notes'],
  ['at ♩. = 60.', 'at ♩._=_60.'],
  ['A♭ major arpeggio, 2 octaves, left hand', 'A♭ major arpeggio, 2_octaves, left hand'],
  ['G-Dur Tonleiter, 1 Oktave', 'G-Dur Tonleiter, 1_Oktave'],
  ['8 starts, 3 steps, 2 cents', '8 starts, 3 steps, 2_cents'],
])('a number stays with its unit, a tempo in one piece: %s', (words, kept) => {
  expect(unbroken(words)).toBe(kept.replaceAll('_', '\u00a0'));
});
