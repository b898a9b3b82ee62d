import { describe, expect, it } from 'vitest';
import { ALL_KEYS, buildExercise, keyFacts, nextKey } from '../../../src/engine/index.ts';
import { circlePlaces } from '../../../src/ui/theory/circle.ts';
import { fingersOf } from '../../../src/ui/theory/fingers.ts';
import { relativeOf } from '../../../src/ui/theory/key-names.ts';
import { exampleOf } from '../../../src/ui/prepare/example.ts';

describe('the circle of fifths', () => {
  const places = circlePlaces();

  it('has the 24 keys once, C at the top and G to its right', () => {
    expect(places.map(({ key }) => key).sort()).toEqual([...ALL_KEYS].sort());
    const at = (key: string) => places.find((place) => place.key === key)!;
    expect(at('C major').xPercent).toBeCloseTo(50);
    expect(at('C major').yPercent).toBeLessThan(10);
    expect(at('G major').xPercent).toBeGreaterThan(60);
  });

  it('each minor key stands inside the major key with its signature', () => {
    for (const minor of places.filter(({ major }) => !major)) {
      const outside = places.find(
        ({ major, xPercent, yPercent }) =>
          major &&
          Math.abs((xPercent - 50) * (minor.yPercent - 50) - (yPercent - 50) * (minor.xPercent - 50)) <
            1e-6 &&
          (xPercent - 50) * (minor.xPercent - 50) + (yPercent - 50) * (minor.yPercent - 50) > 0,
      )!;
      const [one, other] = [keyFacts(minor.key), keyFacts(outside.key)];
      // Enharmonic spellings meet at the bottom: E♭ minor inside F♯ major, six flats and six sharps.
      expect(one.signature.length, minor.key).toBe(other.signature.length);
    }
  });

  it('leaves room for a finger: no two places nearer than 44 px on a phone', () => {
    const sidePx = 340;
    for (const [at, one] of places.entries())
      for (const other of places.slice(at + 1))
        expect(
          (Math.hypot(one.xPercent - other.xPercent, one.yPercent - other.yPercent) * sidePx) / 100,
        ).toBeGreaterThanOrEqual(43.9);
  });
});

describe('keys that belong together', () => {
  it.each([
    ['C major', 'A minor'],
    ['A minor', 'C major'],
    ['Ab major', 'F minor'],
    ['Gb major', 'Eb minor'],
    ['F# minor', 'A major'],
  ])('%s has the signature of %s', (key, relative) => {
    const facts = keyFacts(key);
    expect(relativeOf(key, facts.scale)).toBe(relative);
    expect(keyFacts(relative).signature).toEqual(facts.signature);
  });

  it('the next key goes round the circle, from either spelling', () => {
    expect(nextKey('C major')).toBe('G major');
    expect(nextKey('F major')).toBe('C major');
    expect(nextKey('Gb major')).toBe('Db major');
    expect(nextKey('D minor')).toBe('A minor');
  });
});

describe('fingers with their crossings', () => {
  it('of A♭ major, right hand: the thumb goes under into C going up, and 4 over into A♭ coming down', () => {
    const { up, down } = fingersOf(
      buildExercise({ key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 }),
      'right',
    );
    expect(up.map(({ finger }) => finger).join('')).toBe('4124124');
    expect(up.filter((note) => note.crossing === 'thumb-under').map(({ name }) => name)).toEqual([
      'C4',
      'C5',
    ]);
    expect(down.map(({ finger }) => finger).join('')).toBe('4214214');
    expect(down.filter((note) => note.crossing === 'over-thumb').map(({ name }) => name)).toEqual([
      'Ab4',
      'Ab3',
    ]);
    expect(down[0]?.name).toBe(up.at(-1)?.name);
  });
});

describe('the reference sound of an exercise', () => {
  it('has every note at its beat, even', () => {
    const exercise = buildExercise({ key: 'D major', form: 'progression', hands: 'left', octaves: 1 });
    const tones = exampleOf(exercise, null, 72, 0).tones;
    expect(tones).toHaveLength(15);
    const starts = [...new Set(tones.map(({ timeSec }) => timeSec))];
    const gaps = starts.slice(1).map((start, at) => start - starts[at]!);
    for (const gap of gaps) expect(gap).toBeCloseTo(60 / 72, 6);
  });
});
