import type { KeyFacts } from '../../engine/index.ts';

/** Something of a key to be spelt. */
export type Question =
  | { readonly kind: 'signature' }
  | { readonly kind: 'triad' }
  | { readonly kind: 'chord'; readonly numeral: string };

/** What came of an answer; names are plain ("F#"). */
export type Outcome =
  | { readonly kind: 'right' }
  /** all there, but a signature is written in its own order */
  | { readonly kind: 'order' }
  /** the same key of the piano, but another letter: A♭ for G♯ */
  | { readonly kind: 'spelling'; readonly given: string; readonly wanted: string }
  /** the right letter, with another sign */
  | { readonly kind: 'sign'; readonly given: string }
  /** a note that does not belong */
  | { readonly kind: 'other'; readonly given: string }
  | { readonly kind: 'missing'; readonly count: number };

/** What is asked of a key, in the order in which it is learnt. */
export function questionsOf(facts: KeyFacts): readonly Question[] {
  return [
    { kind: 'signature' },
    { kind: 'triad' },
    ...facts.primaryChords.map(({ numeral }): Question => ({ kind: 'chord', numeral })),
  ];
}

/** The answer, from the same table that the exercises are built from. */
export function answerTo(question: Question, facts: KeyFacts): readonly string[] {
  switch (question.kind) {
    case 'signature':
      return facts.signature;
    case 'triad':
      return facts.triad;
    case 'chord':
      return facts.primaryChords.find(({ numeral }) => numeral === question.numeral)?.notes ?? [];
  }
}

/** An answer, in plain names → what came of it: one thing at a time, the first that is not right. */
export function check(question: Question, given: readonly string[], facts: KeyFacts): Outcome {
  const wanted = answerTo(question, facts);
  const stray = given.find((name, at) => !wanted.includes(name) || given.indexOf(name) !== at);
  if (stray !== undefined) return strayed(stray, wanted, given);
  if (given.length < wanted.length) return { kind: 'missing', count: wanted.length - given.length };
  const inOrder = given.every((name, at) => name === wanted[at]);
  return question.kind === 'signature' && !inOrder ? { kind: 'order' } : { kind: 'right' };
}

function strayed(stray: string, wanted: readonly string[], given: readonly string[]): Outcome {
  const same = wanted.find((name) => name !== stray && pitchClass(name) === pitchClass(stray));
  if (same !== undefined) return { kind: 'spelling', given: stray, wanted: same };
  const letter = wanted.some((name) => name[0] === stray[0] && !given.includes(name));
  return letter ? { kind: 'sign', given: stray } : { kind: 'other', given: stray };
}

const NATURAL: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

function pitchClass(name: string): number {
  const moved = [...name.slice(1)].reduce((sum, sign) => sum + (sign === '#' ? 1 : -1), 0);
  return (NATURAL[name[0]!]! + moved + 12) % 12;
}
