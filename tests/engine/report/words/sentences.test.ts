import { describe, expect, it } from 'vitest';
import { INTENTION } from '../../../../src/engine/exercise/index.ts';
import type { Locale } from '../../../../src/engine/exercise/index.ts';
import { ADVICE } from '../../../../src/engine/report/words/said/advice.ts';
import type { Advice } from '../../../../src/engine/report/words/said/advice.ts';
import type { Said } from '../../../../src/engine/report/words/said/index.ts';
import { IMPROVED, STATEMENT } from '../../../../src/engine/report/words/said/statements.ts';
import type { Saying, Statement } from '../../../../src/engine/report/words/said/statements.ts';
import { tellPractising, tellSaid } from '../../../../src/engine/report/words/telling/index.ts';
import { createValues } from './every-value.ts';

/*
 * Every sentence that can be said, once with each value that changes it: found from the schema of what is said, so that a new situation
 * or value is here by itself.
 */

const ENGLISH: Locale = { language: 'en', naming: 'letters' };
const GERMAN: Locale = { language: 'de', naming: 'german' };

const valuesOf = createValues();
/** A hand lands off by two notes at least; touch and loudness lack where they are given. */
const canBe = (one: Statement): boolean =>
  one.situation === 'landed-off'
    ? one.notes.length > 1
    : one.situation !== 'practised' ||
      !one.lacks.some(
        ({ kind }) => (kind === 'touch' && !one.touch) || (kind === 'loudness' && !one.loudness),
      );
const STATEMENTS = [...valuesOf(STATEMENT).filter(canBe), ...practisedWithManner()];
const ADVICES = valuesOf(ADVICE);
const REST: Advice = { step: 'rest' };
const PEDAL: Statement = { situation: 'pedal-held', steps: [], faults: 0 };

const around = (one: Partial<Said>): Said => ({
  statements: [PEDAL],
  named: 1,
  notes: { right: 12, of: 13 },
  opening: 'none',
  restIsEven: false,
  advice: REST,
  ...one,
});

/** Work that is done: so often, each length so often, in a rhythm; touch and loudness by what was meant, what came of it and by how much. */
function practisedWithManner(): readonly Saying<'practised'>[] {
  const plain: Saying<'practised'> = {
    situation: 'practised',
    steps: [3],
    faults: 0,
    outcome: 'done',
    rhythm: 'even',
    wanted: 3,
    right: 3,
    rightAtEnd: 3,
    repeats: 3,
    lacks: [],
  };
  const touches = (['legato', 'detached', 'staccato'] as const).flatMap((meant) => [
    { ...plain, touch: { meant, outcome: 'so' as const, gapMs: 40 } },
    {
      ...plain,
      lacks: [{ kind: 'touch' as const }],
      touch: { meant, outcome: 'not-so' as const, gapMs: 40 },
    },
  ]);
  const loudnesses = (['growing', 'fading', 'accents-of-3', 'left-over-right', 'right-over-left'] as const)
    .flatMap((meant) => [4.2, -1.3].map((db) => ({ meant, db })))
    .flatMap((loudness) => [
      { ...plain, loudness: { ...loudness, outcome: 'so' as const } },
      { ...plain, loudness: { ...loudness, outcome: 'so' as const, bent: 'early' as const } },
      { ...plain, loudness: { ...loudness, outcome: 'so' as const, bent: 'late' as const } },
      {
        ...plain,
        lacks: [{ kind: 'loudness' as const }],
        loudness: { ...loudness, outcome: 'not-so' as const },
      },
    ]);
  const untold = { ...plain, touch: { meant: 'legato' as const, outcome: 'untold' as const } };
  const both = { ...untold, loudness: { meant: 'growing' as const, outcome: 'untold' as const } };
  const pairs = (['long-short', 'short-long'] as const).map((rhythm) => ({
    ...plain,
    rhythm,
    longToShort: { value: 2.6, plusMinus: 0.2, meant: 3 },
  }));
  const often = [1, 2, 5, 13].flatMap((wanted) =>
    (['even', 'one-note-more'] as const).map((rhythm) => ({ ...plain, wanted, right: wanted, rhythm })),
  );
  return [plain, ...often, ...touches, ...loudnesses, untold, both, ...pairs];
}

/** One thing that is said, as told in one language: alone, beside another, and in the list. */
type Telling = (locale: Locale) => readonly string[];

function tellingOf(statement: Statement): Telling {
  return (locale) => {
    const { verdict, emphasis, list } = tellSaid(around({ statements: [statement] }), locale);
    const beside = tellSaid(around({ statements: [PEDAL, statement], named: 2 }), locale).verdict;
    const half = beside.replace(/^[^;]*/, '…');
    const lines = [half, ...list.map(({ text }) => text)].filter(
      (line) => line.replace(/^…; |\.$/g, '').toLowerCase() !== verdict.replace(/[.?]$/, '').toLowerCase(),
    );
    return [verdict, emphasis, ...lines];
  };
}

const OPENINGS = (['every-note', 'every-sure-note', 'so-far', 'some-notes'] as const).flatMap((opening) =>
  [12, 13].map((right) => around({ opening, notes: { right, of: 13 } })),
);
const AROUND: readonly Said[] = [
  ...OPENINGS,
  around({ restIsEven: true }),
  around({ dotted: true, statements: [{ ...PEDAL, situation: 'drift', fromBpm: 90, toBpm: 80 }] }),
  ...[1, 2, 13].map((faults) => around({ statements: [PEDAL, { ...PEDAL, faults }] })),
  ...createValues()(IMPROVED).map((improved) => around({ improved })),
  around({
    improved: { figure: 'crossing', now: 90, before: 120 },
    statements: [{ ...PEDAL, situation: 'crossing-late-both-ways', lateMs: 90 }],
  }),
];

/** What is told → its tellings, under the name of what it is. */
const TELLINGS: readonly (readonly [name: string, telling: Telling])[] = [
  ...STATEMENTS.map((one) => [one.situation, tellingOf(one)] as const),
  ...ADVICES.map(
    (advice) => [advice.step, (locale: Locale) => [tellSaid(around({ advice }), locale).nextStep]] as const,
  ),
  ...valuesOf(INTENTION).flatMap((intention) =>
    [null, { kind: 'notes' as const, names: ['E', 'G#'] }].map(
      (stretch) => ['practising', (locale: Locale) => [tellPractising(intention, stretch, locale)]] as const,
    ),
  ),
  ...AROUND.map((said) => ['around', (locale: Locale) => [tellSaid(said, locale).verdict]] as const),
];

/** All of it in both languages. */
const BOTH = TELLINGS.map(([name, telling]) => ({
  name,
  english: telling(ENGLISH).join(' / '),
  german: telling(GERMAN).join(' / '),
}));

/** Words of the field, and of how often and where, that both languages need in the same places. */
const FIELDS_WORDS: readonly (readonly [english: string, german: string])[] = [
  ['only', 'nur'],
  ['then the whole', 'dann das Ganze'],
  ['alone', 'allein'],
  ['left hand', 'linken? Hand'],
  ['right hand', 'rechten? Hand'],
  ['both hands|hands together', 'beide Hände'],
  ['chords?\\b(?! progression)', '\\bAkkord'],
  ['going up|\\bto the top|from .* up to (?!\\d)|up and down', 'aufwärts|hinauf'],
  ['coming down|down to|way down|up and down|then down', 'abwärts|hinunter'],
  ['octave', 'Oktav'],
  ['root position', 'Grundstellung'],
  ['inversion', 'Umkehrung'],
  ['in bar', 'in Takt'],
  ['upbeat', 'Auftakt'],
  ['at the start', 'am Anfang'],
  ['at the end', 'am Ende'],
  ['both times', 'beide Male'],
  ['each time', 'jedes Mal'],
  ['in a row', 'hintereinander'],
  ['each length', 'jede Länge'],
  ['(twice|two) in a row', 'zweimal hintereinander'],
  ['three (times )?in a row', 'drei(mal)? hintereinander'],
  ['five (times )?in a row', 'fünf(mal)? hintereinander'],
  ['a beat', 'jeden Schlag'],
  ['every two beats', 'zwei Schläge'],
  ['late', 'spät'],
  ['missing', 'fehlt|fehlen'],
  ['instead of|where (it|they) w', '\\bstatt'],
  ['too high', 'zu hoch'],
  ['too low', 'zu tief'],
  ['pulse', 'Puls'],
  ['lowest', 'tiefste'],
  ['highest', 'höchsten? Ton'],
  ['(inner|middle) note', 'Mittelstimme'],
  ['softer', 'leiser'],
  ['louder', 'lauter'],
  ['accent', 'Akzent|betont'],
  ['not sure', 'nicht sicher'],
  ['ready', 'sitzt'],
  ['every note', 'jeder Ton'],
];

describe('notes in doubt', () => {
  const doubt = (...names: readonly string[]): Statement => ({
    situation: 'not-sure',
    steps: [],
    faults: 0,
    notes: names.map((note, at) => ({ step: at, note, place: { kind: 'up' }, hand: null })),
  });
  it.each([
    [['C'], 'was the C going up struck?', 'Ist das C aufwärts erklungen?'],
    [
      ['C', 'E'],
      'were the C going up and the E going up struck?',
      'Sind das C aufwärts und das E aufwärts erklungen?',
    ],
    [['C', 'E', 'G'], 'not sure of three notes: were they struck?', 'Sind drei Töne erklungen?'],
  ])('are asked about by their names up to two: %j', (names, english, german) => {
    const told = (locale: Locale): string =>
      tellSaid(around({ statements: [doubt(...names)] }), locale).verdict;
    expect(told(ENGLISH).toLowerCase()).toContain(english.toLowerCase());
    expect(told(GERMAN)).toContain(german);
  });
});

describe('every sentence, with every value that changes it', () => {
  const failing = (fails: (text: string) => boolean, locales = [ENGLISH, GERMAN]): readonly string[] =>
    TELLINGS.flatMap(([name, telling]) =>
      locales.flatMap((locale) =>
        telling(locale)
          .filter(fails)
          .map((text) => `${name}: ${text}`),
      ),
    );

  it('is whole: no value is lost in it, no word left out between its signs', () => {
    const broken =
      /undefined|null|NaN|\[object| {2}|^ | $| [,.;:?)]|[(„“] |[,;:]{2}|\(\)|“”|„“|: ?[.;]|[,;]\.$/;
    expect(failing((text) => broken.test(text.replaceAll('_', '').replaceAll(' : ', ':')))).toEqual([]);
  });

  it.each([ENGLISH, GERMAN])('underlines words of its own, and none where all is well, in %o', (locale) => {
    const told = STATEMENTS.map((statement) => ({
      ...tellSaid(around({ statements: [statement] }), locale),
      situation: statement.situation,
    }));
    expect(told.filter(({ verdict, emphasis }) => !verdict.includes(emphasis))).toEqual([]);
    expect(new Set(told.filter(({ emphasis }) => emphasis === '').map(({ situation }) => situation))).toEqual(
      new Set(['nothing-to-remark', 'often-enough', 'at-the-criterion']),
    );
  });

  it('has the same figures in both languages, with the same units', () => {
    const figures = (text: string): string =>
      [...new Set(text.match(/[−+]?\d+(?:[.,]\d+)?(?: (?:%|ms|dB|s\b))?/g))]
        .map((figure) => figure.replace(',', '.'))
        .sort()
        .join();
    expect(BOTH.filter(({ english, german }) => figures(english) !== figures(german))).toEqual([]);
  });

  it.each(FIELDS_WORDS)('says %s where German says %s, and only there', (english, german) => {
    const fails = BOTH.filter(
      (one) => new RegExp(english, 'i').test(one.english) !== new RegExp(german, 'i').test(one.german),
    );
    expect(fails.slice(0, 3)).toEqual([]);
  });

  it('what is told apart in one language is told apart in the other', () => {
    const known = new Map<string, string>();
    const differing = BOTH.flatMap(({ name, english, german }) => {
      // English has one word for a crossing, German two.
      const pair = [english, german.replace(/Unter- und Über|Unter|Über/g, '')].map(
        (text) => `${name}: ${text}`,
      );
      return [pair, [...pair].reverse()].flatMap(([one, other]) => {
        const before = known.get(one!) ?? other!;
        known.set(one!, before);
        return before === other ? [] : [`${one}  =  ${before}  and  ${other}`];
      });
    });
    expect(differing).toEqual([]);
  });
});
