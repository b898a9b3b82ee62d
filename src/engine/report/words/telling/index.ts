import * as v from 'valibot';
import { capital } from '../../../base/text.ts';
import type { Intention, Language, Locale } from '../../../exercise/index.ts';
import type { Words } from '../../types.ts';
import { SAID } from '../said/index.ts';
import type { Advice, NamedStretch, Said, Statement } from '../said/index.ts';
import { english } from './english/index.ts';
import { german } from './german/index.ts';
import type { Clause, MakeVoice, Part, Voice } from './types.ts';

/** What is said of an attempt, in one language. */
export interface ToldWords {
  /** one or two sentences */
  readonly verdict: string;
  /** the part of `verdict` to underline, '' for none */
  readonly emphasis: string;
  readonly nextStep: string;
  /** everything that was found, the gravest first, each with the steps that it speaks of; empty for reports of version 0.1 */
  readonly list: readonly Part[];
  /** of these what `verdict` only counts: for where there is no room for all */
  readonly counted: readonly Part[];
}

const VOICES: Readonly<Record<Language, MakeVoice>> = { en: english, de: german };
const made = new Map<string, Voice>();

/** Made once: it is some hundred sentences, and many reports are told in the same. */
function voiceIn({ language, naming }: Locale): Voice {
  const name = `${language} ${naming}`;
  const voice = made.get(name) ?? VOICES[language](naming);
  made.set(name, voice);
  return voice;
}

/**
 * The words of a stored report → the same in a language and its names of notes. A report of version 0.1, and one that speaks of
 * situations of a later version, is told as it was stored.
 */
export function tellWords(words: Words, locale: Locale): ToldWords {
  if (words.said === undefined || !v.is(SAID, words.said)) return { ...words, list: [], counted: [] };
  return tellSaid(words.said, locale);
}

/** How something is to be practised, and which part of it (null: all), in a language. */
export function tellPractising(intention: Intention, stretch: NamedStretch | null, locale: Locale): string {
  return voiceIn(locale).practising(intention, stretch);
}

/** Values → sentences. */
export function tellSaid(said: Said, locale: Locale): ToldWords {
  const voice = voiceIn(locale);
  const named = said.statements.slice(0, said.named).map((statement) => clauseOf(voice, statement));
  const [head, second] = named as [Clause, Clause?];
  const more = said.statements.slice(said.named).reduce((sum, { faults }) => sum + faults, 0);
  const tail = [
    ...(second === undefined ? [] : [second.half]),
    ...(more === 0 ? [] : [voice.more(more)]),
    ...(said.restIsEven && second === undefined && said.improved === undefined ? [voice.restIsEven] : []),
    ...(said.improved === undefined ? [] : [voice.improved(said.improved, head.sentence)]),
  ];
  // What is asked is asked at the end, or not in the sentence.
  const asks = head.sentence.endsWith('?');
  const opening = asks && tail.length > 0 ? head.half : head.sentence;
  const sentence = [capital(opening), ...tail].join('; ');
  const beats = (text: string): string => (said.dotted === true ? text.replaceAll('♩ =', '♩. =') : text);
  const verdict = beats(
    `${voice.opening(said.opening, said.notes)}${sentence}${asks && tail.length === 0 ? '' : '.'}`,
  );
  const emphasis = beats(head.emphasis);
  const list = said.statements.map((statement) =>
    partsOf(voice, statement).map(({ text, steps }) => ({ text: beats(text), steps })),
  );
  return {
    verdict,
    emphasis: verdict.includes(emphasis) ? emphasis : capital(emphasis),
    nextStep: beats(stepOf(voice, said.advice)),
    list: list.flat(),
    counted: list.slice(said.named).flat(),
  };
}

/** The table's row for this situation takes this situation's values: which no type can follow through a lookup. */
function clauseOf(voice: Voice, statement: Statement): Clause {
  return (voice.clauses[statement.situation] as (saying: Statement) => Clause)(statement);
}

function stepOf(voice: Voice, advice: Advice): string {
  return (voice.steps[advice.step] as (asking: Advice) => string)(advice);
}

function partsOf(voice: Voice, statement: Statement): readonly Part[] {
  const parts = voice.parts[statement.situation] as ((saying: Statement) => readonly Part[]) | undefined;
  const own = parts?.(statement) ?? [{ text: clauseOf(voice, statement).half, steps: statement.steps }];
  return own.map(({ text, steps }) => ({ text: capital(text), steps }));
}
