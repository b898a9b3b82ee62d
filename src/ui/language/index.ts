import { isWhole, tellIntention, tellKept } from '../../engine/index.ts';
import type { ExerciseChoice, Intention, KeptNotice } from '../../engine/index.ts';
import { tellTrouble } from '../../io/troubles/index.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import type { Strings } from './english/index.ts';
import { speaking } from './speaking.svelte.ts';

export {
  LANGUAGES,
  languageOf,
  learn,
  NAMINGS,
  speaking,
  Speaking,
  SPREADSHEETS,
} from './speaking.svelte.ts';
export type { Memory } from './speaking.svelte.ts';
export { told, toldWords } from './told.ts';

/** The text strings in the language of the page; what is drawn with them is drawn anew when the language changes. */
export function strings(): Strings {
  return speaking.strings;
}

/** What is to know besides the playing, in the language of the page. */
export function notice(kept: KeptNotice): string {
  return tellKept(kept, speaking.locale);
}

/** What did not work, in the language of the page. */
export function troubleWords(trouble: Trouble): string {
  return tellTrouble(trouble, speaking.language);
}

/** How an exercise is to be practised, in the language of the page; '' as it is written. */
export function intentionWords(choice: ExerciseChoice, intention: Intention): string {
  return isWhole(intention) ? '' : tellIntention(choice, intention, speaking.locale);
}

/** The name of a sound; one that comes from no file is called in the language of the page. */
export function soundName(name: string): string {
  const { names } = strings().record;
  return Object.entries(names).find(([english]) => english === name)?.[1] ?? name;
}
