import { describe, expect, it } from 'vitest';
import { keyFacts, listedKey, otherNameOf } from '../../src/engine/exercise/index.ts';

/**
 * The six keys that are written the other way round the circle, as music21 10.5.0 spells them (an independent
 * implementation, music21.org): signature in written order, scale, I-IV-V7 or i-iv-V7. Printed once and kept as it came,
 * with "b" for its "-".
 */
const BY_MUSIC21: readonly (readonly [key: string, signature: string, scale: string, chords: string])[] = [
  ['Gb major', 'Bb Eb Ab Db Gb Cb', 'Gb Ab Bb Cb Db Eb F', 'Gb Bb Db, Cb Eb Gb, Db F Ab Cb'],
  ['Cb major', 'Bb Eb Ab Db Gb Cb Fb', 'Cb Db Eb Fb Gb Ab Bb', 'Cb Eb Gb, Fb Ab Cb, Gb Bb Db Fb'],
  ['C# major', 'F# C# G# D# A# E# B#', 'C# D# E# F# G# A# B#', 'C# E# G#, F# A# C#, G# B# D# F#'],
  ['D# minor', 'F# C# G# D# A# E#', 'D# E# F# G# A# B C#', 'D# F# A#, G# B D#, A# C## E# G#'],
  ['A# minor', 'F# C# G# D# A# E# B#', 'A# B# C# D# E# F# G#', 'A# C# E#, D# F# A#, E# G## B# D#'],
  ['Ab minor', 'Bb Eb Ab Db Gb Cb Fb', 'Ab Bb Cb Db Eb Fb Gb', 'Ab Cb Eb, Db Fb Ab, Eb G Bb Db'],
];

describe('the other names of keys', () => {
  it.each(BY_MUSIC21)('%s', (key, signature, scale, chords) => {
    const facts = keyFacts(key);
    expect(facts.signature.join(' ')).toBe(signature);
    expect(facts.scale.join(' ')).toBe(scale);
    expect(facts.primaryChords.map(({ notes }) => notes.join(' ')).join(', ')).toBe(chords);
  });

  it.each([
    ['F# major', 'Gb major'],
    ['B major', 'Cb major'],
    ['Db major', 'C# major'],
    ['Eb minor', 'D# minor'],
    ['Bb minor', 'A# minor'],
    ['G# minor', 'Ab minor'],
  ])('%s and %s are the same keys of the piano', (onIt, other) => {
    expect(otherNameOf(onIt)).toBe(other);
    expect(otherNameOf(other)).toBe(onIt);
    expect(listedKey(other)).toBe(onIt);
  });

  it('there are none of the others', () => {
    for (const key of ['C major', 'D major', 'Ab major', 'A minor', 'F# minor', 'C# minor']) {
      expect(otherNameOf(key)).toBeNull();
      expect(listedKey(key)).toBe(key);
    }
  });
});
