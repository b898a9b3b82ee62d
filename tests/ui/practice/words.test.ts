import { afterEach, describe, expect, it } from 'vitest';
import {
  DEFAULT_CRITERIA,
  standingOf,
  type AttemptSummary,
  type ExerciseChoice,
  type Shortfall,
} from '../../../src/engine/index.ts';
import type { Entry } from '../../../src/io/history/index.ts';
import { speaking } from '../../../src/ui/language/index.ts';
import { coldWords, shortfallWords, standingWords } from '../../../src/ui/practice/standing-words.ts';
import {
  bytesWords,
  entryWords,
  exerciseWords,
  figureWords,
  importWords,
  musicWords,
  placeWords,
  planWords,
  storageWords,
  whenWords,
} from '../../../src/ui/practice/words.ts';
import { attempts, DAY_MS, NOW_MS, READY, summary, today } from '../../engine/standing/history.ts';
import { speakAsAtFirst } from '../support/at-first.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const stand = (made: readonly Partial<AttemptSummary>[]) =>
  standingOf(SCALE, attempts(SCALE, made), DEFAULT_CRITERIA, [80]);
/** Without the thin spaces between figures and units. */
const plain = (text: string): string => text.replaceAll('\u202f', ' ');
const said = (made: readonly Partial<AttemptSummary>[]): string => {
  const { reason, missing } = standingWords(stand(made));
  return plain(`${reason} ${missing}`.trim());
};

afterEach(speakAsAtFirst);

describe('where an exercise stands, said', () => {
  const CASES: readonly (readonly [string, readonly Partial<AttemptSummary>[], string])[] = [
    ['never played', [], 'Not played yet.'],
    ['ready', READY, 'The last three attempts were right and even, at ♩ = 80 or more.'],
    [
      'twice',
      [{}, {}],
      'The last two attempts were right and even, at ♩ = 80 or more. One more like it makes it ready.',
    ],
    [
      'once',
      [{}],
      'The last attempt was right and even, at ♩ = 80 or more. Two more like it make it ready, one of them on another day.',
    ],
    [
      'uneven',
      [{ evennessPercent: 5.42 }],
      'Last time the timing varied by 5.4 % from note to note, and up to 4.8 % counts as even. The same, with the pulse.',
    ],
    [
      'wrong and uneven',
      [{ evennessPercent: 6, wrong: 1 }],
      'Last time one note was wrong. Also, the timing varied by 6.0 % from note to note, and up to 4.8 % counts as even. ' +
        'Slower, until every note is right.',
    ],
    [
      'faults of several kinds',
      [{ wrong: 1, extra: 2 }],
      'Last time three notes were not right: 1 wrong, 2 too many. Slower, until every note is right.',
    ],
    [
      'a late crossing',
      [{ lateCrossings: 1, worstCrossingMs: 92 }],
      'Last time one crossing came 92 ms late. Only the notes around the crossing, slowly; then the whole.',
    ],
    [
      'too slow',
      [{ tempoBpm: 70 }],
      'Last time it went at 70, and 80 or more is asked for. Two or three beats faster each time, as long as it stays even.',
    ],
    [
      'hands apart',
      [{ handsApartMs: 62 }],
      'Last time the hands were 62 ms apart, and up to 40 ms counts as together. Slower, stopping on each beat, both ' +
        'hands together.',
    ],
  ];
  it.each(CASES)('%s', (_name, made, expected) => {
    expect(said(made)).toBe(expected);
  });

  it.each<readonly [Shortfall, string, string]>([
    [
      { kind: 'touch', meant: 'legato', gapMs: 112.4, narrow: false },
      '112 ms were silent between the notes, and legato is asked for',
      'waren zwischen den Tönen 112 ms still; verlangt ist legato',
    ],
    [
      { kind: 'touch', meant: 'staccato', gapMs: 20, narrow: false },
      'the notes were held too long for the staccato that is asked for',
      'klangen die Töne zu lang für das Staccato, das verlangt ist',
    ],
    [
      { kind: 'loudness', db: 4.16, bound: 3, narrow: true },
      'the loudness varied by 4.2 dB from note to note, and up to 3.0 dB is asked for',
      'schwankte die Lautstärke von Ton zu Ton um 4,2 dB; verlangt sind höchstens 3,0 dB',
    ],
  ])('%j too, in both languages', (shortfall, english, german) => {
    expect(plain(shortfallWords(shortfall))).toBe(english);
    speaking.speak('de');
    expect(plain(shortfallWords(shortfall))).toBe(german);
  });

  it('and in German', () => {
    speaking.speak('de');
    expect(said([{ evennessPercent: 5.42, missed: 2 }])).toBe(
      'Beim letzten Mal fehlten zwei Töne. Außerdem schwankte die Zeit von Ton zu Ton um 5,4 %; bis 4,8 % gilt als ' +
        'gleichmäßig. Langsamer, bis jeder Ton stimmt.',
    );
  });
});

it.each([
  [0, 'on none of the last five days', 'an keinem der letzten fünf Tage'],
  [2, 'on two of the last five days', 'an zwei der letzten fünf Tage'],
] as const)('the first try of the day was right on %i of five', (right, english, german) => {
  const cold = { ...stand(READY), cold: { days: 5, right } };
  expect(coldWords(cold)).toContain(english);
  speaking.speak('de');
  expect(coldWords(cold)).toContain(german);
});

describe('names', () => {
  it.each<[ExerciseChoice, string, string]>([
    [
      { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
      'A♭ major arpeggio, 2 octaves, right hand',
      'As-Dur-Arpeggio, 2 Oktaven, rechte Hand',
    ],
    [
      { key: 'F# minor', form: 'scale', hands: 'together', octaves: 1 },
      'F♯ harmonic minor scale, 1 octave, hands together',
      'fis-Moll, harmonische Tonleiter, 1 Oktave, beide Hände',
    ],
    [
      { key: 'C major', form: 'broken-triads', hands: 'left', octaves: 1 },
      'C major broken triads, left hand',
      'C-Dur, gebrochene Dreiklänge, linke Hand',
    ],
  ])('%o', (choice, english, german) => {
    expect(exerciseWords(choice)).toBe(english);
    speaking.speak('de');
    expect(exerciseWords(choice)).toBe(german);
  });

  it('of a place say where each hand stands', () => {
    const place = {
      key: 'D major',
      form: 'scale' as const,
      byHands: { left: stand([]), right: stand(READY), together: stand([{ wrong: 3 }]) },
    };
    expect(placeWords(place)).toBe(
      'D major scale: left hand not played, right hand ready, hands together not yet',
    );
  });
});

const entry = (more: Partial<Entry> = {}): Entry => ({
  id: '0mf1c2r80-1a2b3c4d',
  whenMs: NOW_MS,
  state: 'told',
  name: 'your recording',
  remarks: [],
  device: null,
  choice: SCALE,
  targetBpm: 80,
  durationSec: 6,
  soundBytes: 600_000,
  reason: '',
  summary: summary(SCALE, { missed: 1, extra: 1 }),
  deletedMs: null,
  ...more,
});

describe('an attempt in the list', () => {
  it('says what, when and how', () => {
    expect(entryWords(entry())).toBe('D major scale, 2 octaves, right hand');
    expect(plain(figureWords(entry()))).toBe('12 of 13 right, 1 extra · variation 4.0 % · ♩ = 81');
    expect(figureWords(entry({ state: 'unanalysed', summary: null }))).toBe('not listened to yet');
    expect(figureWords(entry({ state: 'no-report', summary: null }))).toBe('nothing to report was heard');
    expect(entryWords(entry({ summary: null, choice: null }))).toBe('your recording');
  });

  it('says the day as people do', () => {
    expect(whenWords(NOW_MS, NOW_MS)).toMatch(/^today \d\d:\d\d$/);
    expect(whenWords(NOW_MS - DAY_MS, NOW_MS)).toMatch(/^yesterday \d\d:\d\d$/);
    expect(whenWords(NOW_MS - 10 * DAY_MS, NOW_MS)).toBe('15 Nov 2026');
    // Only the day is known.
    const midnight = new Date(NOW_MS).setHours(0, 0, 0, 0);
    expect(whenWords(midnight, NOW_MS)).toBe('today');
    expect(whenWords(midnight - DAY_MS, NOW_MS)).toBe('yesterday');
  });
});

describe('the plan and the store, said', () => {
  it('has the length, the tempo and the reason of each item', () => {
    const [item] = today(20, attempts(SCALE, [{ wrong: 2 }], 1), NOW_MS, DEFAULT_CRITERIA);
    expect(planWords(item!)).toBe('10 minutes, ♩ = 80. Last time two notes were wrong.');
    const [rested] = today(20, attempts(SCALE, READY, 30), NOW_MS, DEFAULT_CRITERIA);
    expect(planWords(rested!)).toMatch(/Not played for 4 weeks\.$/);
    const offer = today(20, attempts(SCALE, READY, 1), NOW_MS, DEFAULT_CRITERIA);
    expect(offer.map(planWords).join(' ')).toMatch(/The other hand is ready; now this one alone\./);
  });

  it('counts bytes and attempts', () => {
    expect(plain(bytesWords(1_234_567))).toBe('1.2 MB');
    expect(plain(bytesWords(999_600_000))).toBe('1.0 GB');
    expect(plain(storageWords([entry(), entry({ soundBytes: 0 })], null))).toBe(
      '2 attempts, 1 with sound (600 kB).',
    );
  });

  it('tells what came of an import', () => {
    expect(importWords({ added: 3, same: 1, both: 1, refused: [{ trouble: 'journal-other' }] })).toBe(
      '3 attempts added; 1 here already; 1 here already but otherwise: both are kept; 1 not taken over.',
    );
  });

  it('calls a minor scale by its kind once', () => {
    speaking.speak('de');
    expect(
      musicWords({ key: 'A minor', form: 'scale', hands: 'left', octaves: 2, minorScale: 'melodic' }),
    ).toBe('a-Moll, melodische Tonleiter, 2 Oktaven');
  });
});
