import { describe, expect, it } from 'vitest';
import { displayName, noteName } from '../../../src/engine/exercise/index.ts';

describe('names for showing', () => {
  it.each([
    ['C4', 'C4', 'C'],
    ['G#4', 'G♯4', 'G♯'],
    ['Bb3', 'B♭3', 'B♭'],
    ['F##5', 'F×5', 'F×'],
    ['Bbb2', 'B♭♭2', 'B♭♭'],
    ['A0', 'A0', 'A'],
    ['B#-1', 'B♯-1', 'B♯'],
  ])('writes %s as %s, and as %s without its octave', (name, shown, pitchClass) => {
    expect(displayName(name)).toBe(shown);
    expect(noteName(name, 'letters')).toBe(pitchClass);
  });

  it.each([
    ['Bb major', 'B♭ major'],
    ['B major', 'B major'],
    ['F# minor', 'F♯ minor'],
  ])('writes the key %s as %s', (key, shown) => {
    expect(displayName(key)).toBe(shown);
  });
});
