import type { Language, NoteNaming, Locale } from '../../engine/index.ts';
import type { Spreadsheet } from '../../io/exchange/index.ts';
import { writing } from '../kit/writing.svelte.ts';
import { ENGLISH, type Strings } from './english/index.ts';

/** Where a choice outlives the page, passed in. `read` gives null where nothing is kept. */
export interface Memory {
  readonly read: (name: string) => string | null;
  readonly write: (name: string, value: string) => void;
}

export const LANGUAGES: readonly { readonly value: Language; readonly label: string }[] = [
  { value: 'en', label: 'English' },
  { value: 'de', label: 'Deutsch' },
];

export const NAMINGS: readonly NoteNaming[] = ['letters', 'german', 'fixed-do'];

export const SPREADSHEETS: readonly Spreadsheet[] = ['point', 'comma'];

/** Those that the page knows by now: every page has English in it, another comes when it is spoken. */
const STRINGS: Partial<Record<Language, Strings>> = { en: ENGLISH };

const COMING: Readonly<Record<Language, () => Promise<Strings>>> = {
  en: () => Promise.resolve(ENGLISH),
  de: async () => (await import('./german/index.ts')).GERMAN,
};

/** Fetches a language's strings; from then on it can be spoken at once. Rejects where they cannot be had. */
export async function learn(language: Language): Promise<void> {
  STRINGS[language] ??= await COMING[language]();
}

/** How notes are called where nobody has chosen. */
const USUAL_NAMING: Readonly<Record<Language, NoteNaming>> = { en: 'letters', de: 'german' };

/** What spreadsheets of a language expect of numbers. */
const USUAL_SPREADSHEET: Readonly<Record<Language, Spreadsheet>> = { en: 'point', de: 'comma' };

/** The language of the page and the names of its notes: chosen, remembered, and read wherever something is written. */
export class Speaking {
  #language: Language = $state('en');
  #chosenNaming: NoteNaming | null = $state(null);
  #chosenSpreadsheet: Spreadsheet | null = $state(null);
  #memory: Memory | null = null;

  get language(): Language {
    return this.#language;
  }

  get naming(): NoteNaming {
    return this.#chosenNaming ?? USUAL_NAMING[this.#language];
  }

  /** how numbers are written in tables that are taken out */
  get spreadsheet(): Spreadsheet {
    return this.#chosenSpreadsheet ?? USUAL_SPREADSHEET[this.#language];
  }

  get locale(): Locale {
    return { language: this.language, naming: this.naming };
  }

  get strings(): Strings {
    return STRINGS[this.#language] ?? ENGLISH;
  }

  /** Takes up what was chosen earlier, as `languageOf` tells. Its language is learnt, or English stands until it is. */
  remember(memory: Memory, preferred: readonly string[]): void {
    this.#memory = memory;
    const chosen = languageOf(memory, preferred);
    this.#setLanguage(STRINGS[chosen] === undefined ? 'en' : chosen);
    this.#chosenNaming = NAMINGS.find((naming) => naming === memory.read('note-names')) ?? null;
    this.#chosenSpreadsheet =
      SPREADSHEETS.find((spreadsheet) => spreadsheet === memory.read('spreadsheet')) ?? null;
  }

  writeTables(spreadsheet: Spreadsheet): void {
    this.#chosenSpreadsheet = spreadsheet;
    this.#memory?.write('spreadsheet', spreadsheet);
  }

  /** At once where the language is learnt, else as soon as it is; where it cannot be had the page speaks on as it did. */
  speak(language: Language): void {
    this.#memory?.write('language', language);
    if (STRINGS[language] !== undefined) this.#setLanguage(language);
    else
      void learn(language)
        .then(() => this.#setLanguage(language))
        .catch(() => undefined);
  }

  callNotes(naming: NoteNaming): void {
    this.#chosenNaming = naming;
    this.#memory?.write('note-names', naming);
  }

  #setLanguage(language: Language): void {
    this.#language = language;
    const { decimalSign, and } = this.strings;
    writing.decimalSign = decimalSign;
    writing.and = and;
  }
}

/** What was chosen earlier; where nothing was, the first of `preferred` (e.g. "de-AT") that is spoken here. */
export function languageOf(memory: Memory, preferred: readonly string[]): Language {
  const kept = memory.read('language') ?? preferred.map((tag) => tag.slice(0, 2)).find(isLanguage) ?? 'en';
  return isLanguage(kept) ? kept : 'en';
}

function isLanguage(tag: string): tag is Language {
  return Object.hasOwn(COMING, tag);
}

/** The one that the page speaks with. */
export const speaking = new Speaking();
