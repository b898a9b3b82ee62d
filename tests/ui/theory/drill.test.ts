import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ALL_KEYS, keyFacts } from '../../../src/engine/index.ts';
import { answerTo, check, questionsOf, type Question } from '../../../src/ui/theory/drill.ts';

const SIGNATURE: Question = { kind: 'signature' };
const TRIAD: Question = { kind: 'triad' };
const V7: Question = { kind: 'chord', numeral: 'V7' };
const A = keyFacts('A major');

describe('the drill', () => {
  it('asks for the signature, the triad and the three primary chords', () => {
    expect(questionsOf(A).map((one) => (one.kind === 'chord' ? one.numeral : one.kind))).toEqual([
      'signature',
      'triad',
      'I',
      'IV',
      'V7',
    ]);
    expect(questionsOf(keyFacts('A minor')).at(-2)).toEqual({ kind: 'chord', numeral: 'iv' });
  });

  it.each([
    ['the signature in its order', SIGNATURE, 'F# C# G#', { kind: 'right' }],
    ['the signature in another order', SIGNATURE, 'C# F# G#', { kind: 'order' }],
    ['a signature that is not all there', SIGNATURE, 'F# C#', { kind: 'missing', count: 1 }],
    ['nothing', SIGNATURE, '', { kind: 'missing', count: 3 }],
    // A major has G sharp, never A flat.
    ['A flat for G sharp', SIGNATURE, 'F# C# Ab', { kind: 'spelling', given: 'Ab', wanted: 'G#' }],
    ['a natural for a sharp', TRIAD, 'A C E', { kind: 'sign', given: 'C' }],
    ['a note that does not belong', TRIAD, 'A D E', { kind: 'other', given: 'D' }],
    ['a note twice', TRIAD, 'A A E', { kind: 'other', given: 'A' }],
    ['a chord from its root', V7, 'E G# B D', { kind: 'right' }],
    ['a chord from another note', V7, 'G# B D E', { kind: 'right' }],
    ['V7 without its seventh', V7, 'E G# B', { kind: 'missing', count: 1 }],
  ] as const)('%s', (_, question, given, outcome) => {
    expect(check(question, given.split(' ').filter(Boolean), A)).toEqual(outcome);
  });

  it('a key without sharps or flats is answered with none', () => {
    expect(check(SIGNATURE, [], keyFacts('C major'))).toEqual({ kind: 'right' });
    expect(check(SIGNATURE, ['F#'], keyFacts('C major'))).toEqual({ kind: 'other', given: 'F#' });
  });

  it('V7 of a minor key has the raised leading note', () => {
    expect(answerTo(V7, keyFacts('A minor'))).toEqual(['E', 'G#', 'B', 'D']);
    expect(check(V7, ['E', 'G', 'B', 'D'], keyFacts('A minor'))).toEqual({ kind: 'sign', given: 'G' });
    expect(check(V7, ['D#', 'G', 'A#', 'C#'], keyFacts('G# minor'))).toEqual({
      kind: 'spelling',
      given: 'G',
      wanted: 'F##',
    });
  });

  it('takes the right answer to every question of every key, and no answer that is changed', () => {
    const names = ['C', 'D', 'E', 'F', 'G', 'A', 'B'].flatMap((letter) => [
      letter,
      `${letter}#`,
      `${letter}b`,
    ]);
    fc.assert(
      fc.property(
        fc.constantFrom(...ALL_KEYS),
        fc.nat(4),
        fc.nat(6),
        fc.constantFrom(...names),
        (key, at, place, name) => {
          const facts = keyFacts(key);
          const question = questionsOf(facts)[at]!;
          const answer = answerTo(question, facts);
          expect(check(question, answer, facts)).toEqual({ kind: 'right' });
          const changed = answer.map((one, i) => (i === place % Math.max(1, answer.length) ? name : one));
          fc.pre(answer.length > 0 && !answer.includes(name));
          expect(check(question, changed, facts).kind).not.toBe('right');
        },
      ),
    );
  });
});
