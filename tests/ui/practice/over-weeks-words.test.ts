import { afterEach, describe, expect, it } from 'vitest';
import type { Recurring } from '../../../src/engine/index.ts';
import { speaking } from '../../../src/ui/language/index.ts';
import { coldBestWords, recurringWords } from '../../../src/ui/practice/standing-words.ts';
import { speakAsAtFirst } from '../support/at-first.ts';

afterEach(speakAsAtFirst);

const FOUND: Recurring = {
  kind: 'late',
  place: 'crossing-up',
  hands: 'right',
  attempts: Array.from({ length: 8 }, (_, at) => ({ id: String(at), whenMs: at, key: 'F major' })),
  of: 12,
  keys: 5,
  ofKeys: 7,
  byChance: 1e-5,
  then: { before: 6, ofBefore: 6, since: 2, ofSince: 6 },
};
const plain = (text: string): string => text.replaceAll('\u202f', ' ');

describe('what comes back over the weeks, said', () => {
  it('names hand, place, attempts and keys, and what practice did', () => {
    expect(recurringWords(FOUND)).toBe(
      'Right hand: the note after a crossing going up came late in 8 of 12 attempts, in 5 of 7 keys. ' +
        'In the earlier half 6 of 6, in the later one 2 of 6.',
    );
    speaking.speak('de');
    expect(recurringWords({ ...FOUND, kind: 'note', place: 'degree-7', then: null })).toBe(
      'Rechte Hand: die siebte Stufe der Tonart falsch oder ausgelassen in 8 von 12 Versuchen, in 5 von 7 Tonarten.',
    );
  });

  it('sets the first try of a day against the best', () => {
    expect(plain(coldBestWords({ days: 5, coldPercent: 8.1, bestPercent: 5.2 }))).toBe(
      'From cold it varies by 8.1 %, at the best of the day by 5.2 % (the middle of five days).',
    );
  });
});
