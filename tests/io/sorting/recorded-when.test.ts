import { describe, expect, it } from 'vitest';
import { recordedWhen } from '../../../src/io/sorting/recorded-when.ts';

const at = (...parts: readonly [number, number, number, number?, number?, number?]): number => {
  const [year, month, day, hour = 0, minute = 0, second = 0] = parts;
  return new Date(year, month - 1, day, hour, minute, second).getTime();
};

describe('when a recording was made, by its name', () => {
  it.each([
    ['AUD-20261101-WA0003.m4a', at(2026, 11, 1)],
    ['20261101_174502.wav', at(2026, 11, 1, 17, 45, 2)],
    ['2026-11-01 D major.mp3', at(2026, 11, 1)],
    ['Mara 2026-11-01 at 17.45.02.ogg', at(2026, 11, 1, 17, 45, 2)],
    ['2026-11-01T17:45.flac', at(2026, 11, 1, 17, 45)],
    ['Aufnahme 1.11.2026.m4a', at(2026, 11, 1)],
    ['recording (4).m4a', null],
    ['31.6.2026.wav', null],
    ['120261101.wav', null],
    ['2026-13-01.wav', null],
    ['11-01-2026.wav', null],
    ['D major 80 bpm.wav', null],
  ])('%s', (name, wanted) => {
    expect(recordedWhen(name)).toBe(wanted);
  });
});
