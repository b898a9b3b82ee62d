import type { Language } from '../../engine/index.ts';
import { english } from './english.ts';
import { german } from './german.ts';
import type { Tell, Tellings, Trouble } from './types.ts';

export type { Container, Keeper, OtherFile, Trouble } from './types.ts';

const LANGUAGES: Readonly<Record<Language, Tellings>> = {
  en: english((trouble) => tellTrouble(trouble)),
  de: german((trouble) => tellTrouble(trouble, 'de')),
};

/** A trouble → what it is and the way out, in a language. */
export function tellTrouble(trouble: Trouble, language: Language = 'en'): string {
  const telling = LANGUAGES[language][trouble.trouble];
  // The table's row for this trouble takes this trouble's values: which no type can follow through a lookup.
  return typeof telling === 'string' ? telling : (telling as Tell)(trouble);
}

/** An error that says what it is as a code with values, so that it is told in any language. Its message is English, for logs. */
export class EvenfallError extends Error {
  override readonly name: string = 'EvenfallError';
  readonly trouble: Trouble;

  constructor(trouble: Trouble) {
    super(tellTrouble(trouble));
    this.trouble = trouble;
  }
}

/** Whatever was thrown → what it is, to be shown; what is none of ours as the browser or the system says it. */
export function troubleOf(thrown: unknown): Trouble {
  if (thrown instanceof EvenfallError) return thrown.trouble;
  return { trouble: 'unforeseen', detail: thrown instanceof Error ? thrown.message : String(thrown) };
}
