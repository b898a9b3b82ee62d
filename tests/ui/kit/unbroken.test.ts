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
  ['the crossing going up to C comes late', 'the crossing going up to_C comes late'],
  ['der Untersatz aufwärts zu Fis und B♭', 'der Untersatz aufwärts zu_Fis und_B♭'],
  ['A♭ major: every F♯, an E–G', 'A♭ major: every_F♯, an E–G'],
  ['F♯ C♯ G♯', 'F♯ C♯ G♯'],
  ['8 starts, 3 steps, 2 cents', '8 starts, 3 steps, 2_cents'],
])(
  'a number stays with its unit, a tempo in one piece, the name of a note with the word before it: %s',
  (words, kept) => {
    expect(unbroken(words)).toBe(kept.replaceAll('_', '\u00a0'));
  },
);
