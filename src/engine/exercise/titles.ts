import { FORM_NAMES } from './form-names.ts';
import type { Language } from './names.ts';
import type { ExerciseChoice, Hands } from './types.ts';

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

const ENGLISH: TitleWords = {
  octaves: ['one octave', 'two octaves', 'three octaves', 'four octaves'],
  hands: { left: 'left hand', right: 'right hand', together: 'hands together' },
  form: ({ form, key, minorScale }) => {
    switch (form) {
      case 'arpeggio':
        return 'tonic arpeggio';
      case 'triads':
        return 'tonic triad and its inversions';
      case 'broken-triads':
        return 'broken tonic triad and its inversions';
      case 'progression':
        return `progression ${inKey(key, NUMERALS)}`;
      case 'chromatic':
        return 'chromatic scale from the tonic';
      case 'passage':
        return 'passage of your own';
      default:
        return inKey(key, `${minorScale === undefined ? '' : `${minorScale} minor `}${FORM_NAMES.en[form]}`);
    }
  },
};

const GERMAN_MINOR = { natural: 'natürliche', harmonic: 'harmonische', melodic: 'melodische' } as const;

/** The trade's words in German; common practice, no source. */
const GERMAN: TitleWords = {
  octaves: ['eine Oktave', 'zwei Oktaven', 'drei Oktaven', 'vier Oktaven'],
  hands: { left: 'linke Hand', right: 'rechte Hand', together: 'beide Hände' },
  form: ({ form, key, minorScale }) => {
    switch (form) {
      case 'arpeggio':
        return 'Tonika-Arpeggio';
      case 'triads':
        return 'Tonika-Dreiklang mit Umkehrungen';
      case 'broken-triads':
        return 'gebrochener Tonika-Dreiklang mit Umkehrungen';
      case 'progression':
        return `Kadenz ${inKey(key, NUMERALS)}`;
      case 'chromatic':
        return 'chromatische Tonleiter vom Grundton';
      default:
        return minorScale === undefined
          ? inKey(key, FORM_NAMES.de[form])
          : FORM_NAMES.de[form].replace('Tonleiter', `${GERMAN_MINOR[minorScale]} Molltonleiter`);
    }
  },
};

export const TITLE_WORDS: Readonly<Record<Language, TitleWords>> = { en: ENGLISH, de: GERMAN };
