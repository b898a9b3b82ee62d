import { FORM_NAMES } from './form-names.ts';
import type { Language } from './names.ts';
import type { ExerciseChoice, Form, Hands } from './types.ts';

/** The words of which a title is made. */
interface TitleWords {
  /** one to four */
  readonly octaves: readonly string[];
  readonly hands: Readonly<Record<Hands, string>>;
  readonly form: (choice: ExerciseChoice) => string;
}

/** Numerals as they are in the key: minor chords small, a diminished one with its sign. */
const inKey = (key: string, text: string): string =>
  key.endsWith('major')
    ? text
    : text.replace(/\bI–IV–(I|ii6)–(V7?)–I\b/, (_, third: string, dominant: string) =>
        ['i', 'iv', third === 'I' ? 'i' : 'ii°6', dominant, 'i'].join('–'),
      );
const NUMERALS = 'I–IV–I–V7–I';

/** What is called otherwise at the head than within a sentence. */
const ENGLISH_HEADS: Partial<Readonly<Record<Form, string>>> = {
  arpeggio: 'tonic arpeggio',
  triads: 'tonic triad and its inversions',
  'broken-triads': 'broken tonic triad and its inversions',
  progression: `progression ${NUMERALS}`,
  chromatic: 'chromatic scale from the tonic',
  passage: 'passage of your own',
};

const ENGLISH: TitleWords = {
  octaves: ['one octave', 'two octaves', 'three octaves', 'four octaves'],
  hands: { left: 'left hand', right: 'right hand', together: 'hands together' },
  form: ({ form, key, minorScale }) => {
    const minor = minorScale === undefined ? '' : `${minorScale} minor `;
    return inKey(key, ENGLISH_HEADS[form] ?? `${minor}${FORM_NAMES.en[form]}`);
  },
};

const GERMAN_MINOR = { natural: 'natürliche', harmonic: 'harmonische', melodic: 'melodische' } as const;
const GERMAN_HEADS: Partial<Readonly<Record<Form, string>>> = {
  arpeggio: 'Tonika-Arpeggio',
  triads: 'Tonika-Dreiklang mit Umkehrungen',
  'broken-triads': 'gebrochener Tonika-Dreiklang mit Umkehrungen',
  progression: `Kadenz ${NUMERALS}`,
  chromatic: 'chromatische Tonleiter vom Grundton',
};

/** The trade's words in German; common practice, no source. */
const GERMAN: TitleWords = {
  octaves: ['eine Oktave', 'zwei Oktaven', 'drei Oktaven', 'vier Oktaven'],
  hands: { left: 'linke Hand', right: 'rechte Hand', together: 'beide Hände' },
  form: ({ form, key, minorScale }) =>
    minorScale === undefined
      ? inKey(key, GERMAN_HEADS[form] ?? FORM_NAMES.de[form])
      : FORM_NAMES.de[form].replace('Tonleiter', `${GERMAN_MINOR[minorScale]} Molltonleiter`),
};

export const TITLE_WORDS: Readonly<Record<Language, TitleWords>> = { en: ENGLISH, de: GERMAN };
