import type { Language, NoteNaming, Locale } from '../../engine/index.ts';
import type { Spreadsheet } from '../../io/exchange/index.ts';
import { writing } from '../kit/writing.svelte.ts';
import { ENGLISH, type Strings } from './english/index.ts';
import { GERMAN } from './german/index.ts';

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

const STRINGS: Readonly<Record<Language, Strings>> = { en: ENGLISH, de: GERMAN };

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
    return STRINGS[this.#language];
  }

  /** Takes up what was chosen earlier; where nothing was, the first of `preferred` (e.g. "de-AT") that is spoken here. */
  remember(memory: Memory, preferred: readonly string[]): void {
    this.#memory = memory;
    const kept = memory.read('language') ?? preferred.map((tag) => tag.slice(0, 2)).find(isLanguage) ?? 'en';
    this.#setLanguage(isLanguage(kept) ? kept : 'en');
    this.#chosenNaming = NAMINGS.find((naming) => naming === memory.read('note-names')) ?? null;
    this.#chosenSpreadsheet =
      SPREADSHEETS.find((spreadsheet) => spreadsheet === memory.read('spreadsheet')) ?? null;
  }

  writeTables(spreadsheet: Spreadsheet): void {
    this.#chosenSpreadsheet = spreadsheet;
    this.#memory?.write('spreadsheet', spreadsheet);
  }

  speak(language: Language): void {
    this.#setLanguage(language);
    this.#memory?.write('language', language);
  }

  callNotes(naming: NoteNaming): void {
    this.#chosenNaming = naming;
    this.#memory?.write('note-names', naming);
  }

  #setLanguage(language: Language): void {
    this.#language = language;
    writing.decimalSign = STRINGS[language].decimalSign;
    writing.and = STRINGS[language].and;
  }
}

function isLanguage(tag: string): tag is Language {
  return Object.hasOwn(STRINGS, tag);
}

/** The one that the page speaks with. */
export const speaking = new Speaking();
