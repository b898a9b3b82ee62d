import type { Intention, NoteNaming } from '../../../exercise/index.ts';
import type {
  AdviceName,
  Asking,
  Improved,
  NamedStretch,
  Said,
  Saying,
  SituationName,
  Task,
} from '../said/index.ts';

/** A situation in a sentence without its full stop, and in half a sentence, to stand beside others. */
export interface Clause {
  readonly sentence: string;
  readonly half: string;
  /** the part of `sentence` to underline */
  readonly emphasis: string;
}

/** One line for each thing that a situation speaks of. */
export interface Part {
  readonly text: string;
  readonly steps: readonly number[];
}

/** How every situation, every part of it and every next step is said: what one language can say, all must be able to. */
export type Clauses = { readonly [Name in SituationName]: (saying: Saying<Name>) => Clause };
export type Parts = { readonly [Name in SituationName]?: (saying: Saying<Name>) => readonly Part[] };
export type Steps = { readonly [Name in AdviceName]: (asking: Asking<Name>) => string };

/** A language, with what it calls the notes. */
export interface Voice {
  readonly clauses: Clauses;
  /** of situations that speak of several things; the others are one part */
  readonly parts: Parts;
  readonly steps: Steps;
  /** "Every note right. ", "12 of 13 notes right. " */
  readonly opening: (opening: Said['opening'], notes: Said['notes']) => string;
  /** how something is to be practised, and which part of it, null: all */
  readonly practising: (intention: Intention, stretch: NamedStretch | null) => string;
  /** what is not named but counted: "two more things" */
  readonly more: (things: number) => string;
  readonly restIsEven: string;
  /** after a sentence on the same trouble */
  readonly improved: (improved: Improved, sentence: string) => string;
}

export type MakeVoice = (naming: NoteNaming) => Voice;

/** Whether chords are to be played, and not single notes. */
export const ofChords = ({ stretch }: Pick<Task, 'stretch'>): boolean =>
  stretch.kind === 'whole' ? stretch.chords : stretch.kind === 'chords' || stretch.kind === 'numerals';

/** Words with a blank between, those left out that are empty. */
export const joined = (...words: readonly string[]): string => words.filter((word) => word !== '').join(' ');

/** A sentence that is short enough to stand beside others whole. */
export const plain = (sentence: string, emphasis: string): Clause => ({ sentence, half: sentence, emphasis });

/** Late by so little is not heard as late at any but very fast tempi. */
const IN_TIME_MS = 10;

/** Whether what was late is so no longer. */
export function isInTime({ figure, now }: Exclude<Improved, { readonly figure: 'notes' }>): boolean {
  return (figure === 'crossing' || figure === 'turn') && now <= IN_TIME_MS;
}

/** Delays within so much of each other weigh the same. */
const EQUAL = 0.9;

/**
 * Two that come late by as much → both by name and place, the latest first, and by how much; `twice`: they are called alike. null: one
 * is graver, or they are not two.
 */
export function twoAlike<One extends { readonly lateMs: number }>(
  ones: readonly One[],
  say: (one: One) => string,
  and: string,
): { readonly what: string; readonly ms: string; readonly twice: boolean } | null {
  const [first, second] = ones;
  if (first === undefined || second === undefined || ones.length > 2) return null;
  if (second.lateMs < EQUAL * first.lateMs) return null;
  const twice = say(first) === say(second);
  const { lateMs } = first;
  const ms = lateMs === second.lateMs ? String(lateMs) : `${lateMs} ${and} ${second.lateMs}`;
  return { what: twice ? say(first) : `${say(first)} ${and} ${say(second)}`, ms, twice };
}
