import type { KeyFacts, MinorScale } from '../../engine/index.ts';
import { shownName } from '../names/index.ts';

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven'] as const;
const MINOR_NAMES: readonly MinorScale[] = ['natural', 'harmonic', 'melodic'];

const names = (notes: readonly string[]): string => notes.map(shownName).join(' ');
const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

/** What there is to know about a key, in lines. */
export function keyLines(facts: KeyFacts): readonly { readonly term: string; readonly words: string }[] {
  const minor = facts.minorScales;
  return [
    { term: 'Key signature', words: signatureWords(facts) },
    ...(minor === undefined
      ? [{ term: 'Scale', words: names(facts.scale) }]
      : MINOR_NAMES.map((name) => ({ term: `${capital(name)} scale`, words: names(minor[name]) }))),
    { term: 'Tonic triad', words: names(facts.triad) },
    {
      term: 'Primary chords',
      words: facts.primaryChords.map((chord) => `${chord.numeral}\u2002${names(chord.notes)}`).join('\u2003'),
    },
  ];
}

/** "three sharps: F♯ C♯ G♯" */
export function signatureWords(facts: KeyFacts): string {
  const count = facts.signature.length;
  if (count === 0) return 'no sharps or flats';
  const kind = facts.accidental === 'sharps' ? 'sharp' : 'flat';
  return `${COUNTS[count] ?? count} ${kind}${count === 1 ? '' : 's'}: ${names(facts.signature)}`;
}
