import type { MakeVoice } from '../types.ts';
import { aboutNotes, partsAboutNotes } from './notes.ts';
import { count, notesIn } from './places.ts';
import { aboutProgress, improvedAfter, opening, partsAboutProgress } from './progress.ts';
import { practising } from './practice.ts';
import { nextSteps } from './steps.ts';
import { aboutTime, partsAboutTime } from './time.ts';

/** The words of the report in English. */
export const english: MakeVoice = (naming) => {
  const say = notesIn(naming);
  return {
    clauses: { ...aboutNotes(say, naming), ...aboutTime(say), ...aboutProgress(say, naming) },
    parts: { ...partsAboutNotes(say), ...partsAboutTime(say), ...partsAboutProgress(say) },
    steps: nextSteps(say, naming),
    opening,
    practising: (intention, stretch) =>
      practising(intention, stretch === null ? '' : `only ${say.stretch(stretch)}`),
    more: (things) => `${things === 1 ? 'one more thing' : `${count(things)} more things`}`,
    restIsEven: 'the rest is even',
    improved: improvedAfter,
  };
};
