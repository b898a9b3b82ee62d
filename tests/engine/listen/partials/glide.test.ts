import { describe, expect, it } from 'vitest';
import { RATE_HZ } from '../../../../src/engine/listen/audio/index.ts';
import { glidesAsOne } from '../../../../src/engine/listen/partials/glide.ts';
import { midiToHz } from '../../../../src/engine/base/units.ts';

const MIDI = 55;
const ONSET_SEC = 0.2;

/** Harmonic partials, each by so many cents a second off its place: closed form, phase the integral of the frequency. */
function tone(centsASecond: readonly number[]): Float32Array {
  const sound = new Float32Array(RATE_HZ);
  centsASecond.forEach((slope, at) => {
    const slopePerSec = (slope * Math.LN2) / 1200;
    const placeHz = (at + 1) * midiToHz(MIDI);
    for (let k = Math.round(ONSET_SEC * RATE_HZ); k < sound.length; k++) {
      const sec = k / RATE_HZ - ONSET_SEC;
      const cycles = slope === 0 ? placeHz * sec : (placeHz * Math.expm1(slopePerSec * sec)) / slopePerSec;
      sound[k]! += (0.2 / (at + 1)) * Math.sin(2 * Math.PI * cycles);
    }
  });
  return sound;
}

describe('a tone whose partials glide together', () => {
  it.each<[string, readonly number[], boolean]>([
    ['a string keeps its pitch', [0, 0, 0, 0], false],
    ['a hard blow lets it sink by a few cents', [-50, -50, -50, -50], false],
    ['a voice falls, all partials together', [-250, -250, -250, -250], true],
    ['… or rises', [250, 250, 250, 250], true],
    ['one partial that another tone takes along is no voice', [0, 250, 0, 0], false],
    ['partials that go apart are none', [250, -250, 250, 0], false],
  ])('%s', (_, centsASecond, glides) => {
    expect(glidesAsOne(tone(centsASecond), ONSET_SEC, MIDI)).toBe(glides);
  });

  it('is not told of what ends with the recording', () => {
    expect(glidesAsOne(tone([0, 0, 0]).slice(0, 4500), ONSET_SEC, MIDI)).toBe(false);
  });
});
