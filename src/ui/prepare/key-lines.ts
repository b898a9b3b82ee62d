import type { KeyFacts, MinorScale } from '../../engine/index.ts';
import { strings } from '../language/index.ts';
import { shownName } from '../names/index.ts';

const MINOR_NAMES: readonly MinorScale[] = ['natural', 'harmonic', 'melodic'];

const names = (notes: readonly string[]): string => notes.map(shownName).join(' ');

/** What there is to know about a key, in lines. */
export function keyLines(facts: KeyFacts): readonly { readonly term: string; readonly words: string }[] {
  const minor = facts.minorScales;
  const t = strings().keys;
  return [
    { term: t.signature, words: signatureWords(facts) },
    ...(minor === undefined
      ? [{ term: t.scale, words: names(facts.scale) }]
      : MINOR_NAMES.map((name) => ({ term: t.minorScales[name], words: names(minor[name]) }))),
    { term: t.triad, words: names(facts.triad) },
    {
      term: t.primaryChords,
      words: facts.primaryChords.map((chord) => `${chord.numeral}\u2002${names(chord.notes)}`).join('\u2003'),
    },
  ];
}

/** "three sharps: F♯ C♯ G♯" */
export function signatureWords(facts: KeyFacts): string {
  const count = facts.signature.length;
  const t = strings().names;
  if (count === 0) return t.noSigns;
  const kind = facts.accidental === 'sharps' ? t.sharps(count) : t.flats(count);
  return `${t.counts[count] ?? count} ${kind}: ${names(facts.signature)}`;
}
