import type { Language } from './names.ts';
import type { Form } from './types.ts';

/** What a form is called within a sentence, and with its article. */
interface FormName {
  readonly name: string;
  readonly the: string;
}

const the = (name: string): FormName => ({ name, the: `the ${name}` });
const die = (name: string): FormName => ({ name, the: `die ${name}` });
const das = (name: string): FormName => ({ name, the: `das ${name}` });

const CADENCES = {
  cadence: 'I–IV–I–V–I',
  'cadence-seventh': 'I–IV–I–V7–I',
  'cadence-second': 'I–IV–ii6–V7–I',
} as const;
type Positions = Readonly<Record<'fifth' | 'octave' | 'third', string>>;
type Cadence = `${keyof typeof CADENCES}-${keyof Positions}`;

/** Each cadence by its chords and by what lies on top of the first. */
function cadences(
  name: (chords: string, top: string) => FormName,
  positions: Positions,
): Readonly<Record<Cadence, FormName>> {
  return Object.fromEntries(
    Object.entries(CADENCES).flatMap(([kind, chords]) =>
      Object.entries(positions).map(([position, top]) => [`${kind}-${position}`, name(chords, top)]),
    ),
  ) as Readonly<Record<Cadence, FormName>>;
}

/** The trade's words; common practice, no source. */
const NAMES: Readonly<Record<Language, Readonly<Record<Form, FormName>>>> = {
  en: {
    arpeggio: the('arpeggio'),
    scale: the('scale'),
    triads: { name: 'triads', the: 'the solid triads' },
    'broken-triads': the('broken triads'),
    progression: { name: 'progression', the: 'the chord progression' },
    'dominant-seventh': the('dominant seventh arpeggio'),
    'diminished-seventh': the('diminished seventh arpeggio'),
    chromatic: the('chromatic scale'),
    'five-finger': the('five-finger pattern'),
    'contrary-motion': the('scale in contrary motion'),
    'two-octaves-apart': the('scale, hands two octaves apart'),
    'tenths-apart': the('scale, hands a tenth apart'),
    'sixths-apart': the('scale, hands a sixth apart'),
    'thirds-apart': the('scale, hands a third apart'),
    'scale-in-octaves': the('scale in octaves'),
    'double-thirds': the('scale in double thirds'),
    'double-sixths': the('scale in double sixths'),
    'arpeggio-first-inversion': the('arpeggio in first inversion'),
    'arpeggio-second-inversion': the('arpeggio in second inversion'),
    'four-note-chords': the('four-note chords'),
    'broken-four-note-chords': the('broken four-note chords'),
    ...cadences((chords, top) => the(`cadence ${chords} over the bass, ${top} on top`), {
      fifth: 'fifth',
      octave: 'octave',
      third: 'third',
    }),
    passage: the('passage'),
  },
  de: {
    arpeggio: das('Arpeggio'),
    scale: die('Tonleiter'),
    triads: die('Dreiklänge'),
    'broken-triads': { name: 'gebrochene Dreiklänge', the: 'die gebrochenen Dreiklänge' },
    progression: die('Kadenz'),
    'dominant-seventh': {
      name: 'Dominantseptakkord als Arpeggio',
      the: 'der Dominantseptakkord als Arpeggio',
    },
    'diminished-seventh': {
      name: 'verminderter Septakkord als Arpeggio',
      the: 'der verminderte Septakkord als Arpeggio',
    },
    chromatic: die('chromatische Tonleiter'),
    'five-finger': die('Fünftonreihe'),
    'contrary-motion': die('Tonleiter in Gegenbewegung'),
    'two-octaves-apart': die('Tonleiter im Abstand von zwei Oktaven'),
    'tenths-apart': die('Tonleiter im Abstand einer Dezime'),
    'sixths-apart': die('Tonleiter im Abstand einer Sexte'),
    'thirds-apart': die('Tonleiter im Abstand einer Terz'),
    'scale-in-octaves': die('Tonleiter in Oktaven'),
    'double-thirds': die('Tonleiter in Doppelterzen'),
    'double-sixths': die('Tonleiter in Doppelsexten'),
    'arpeggio-first-inversion': das('Arpeggio in erster Umkehrung'),
    'arpeggio-second-inversion': das('Arpeggio in zweiter Umkehrung'),
    'four-note-chords': { name: 'vierstimmige Akkorde', the: 'die vierstimmigen Akkorde' },
    'broken-four-note-chords': {
      name: 'gebrochene vierstimmige Akkorde',
      the: 'die gebrochenen vierstimmigen Akkorde',
    },
    ...cadences((chords, top) => die(`Kadenz ${chords} mit Bass, ${top}`), {
      fifth: 'Quintlage',
      octave: 'Oktavlage',
      third: 'Terzlage',
    }),
    passage: { name: 'eigene Stelle', the: 'die Stelle' },
  },
};

/** A form with its article, as a subject: "the solid triads". */
export function theForm(form: Form, language: Language): string {
  return NAMES[language][form].the;
}

const namesIn = (language: Language): Readonly<Record<Form, string>> =>
  Object.fromEntries(Object.entries(NAMES[language]).map(([form, { name }]) => [form, name])) as Readonly<
    Record<Form, string>
  >;

/** The forms by their names within a sentence: "arpeggio in first inversion". */
export const FORM_NAMES: Readonly<Record<Language, Readonly<Record<Form, string>>>> = {
  en: namesIn('en'),
  de: namesIn('de'),
};
