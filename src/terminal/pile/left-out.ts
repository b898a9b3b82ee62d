import { tellKept, tellNotice } from '../../engine/index.ts';
import type { Language } from '../../engine/index.ts';
import { plainName } from '../../io/check/index.ts';
import { tellTrouble } from '../../io/troubles/index.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import { MESSAGES, localeOf } from '../language/index.ts';
import type { Pile } from './types.ts';

/** A recording, or a part of one, in which nobody's attempts were found. */
export interface LeftOut {
  readonly file: string;
  readonly student: string;
  readonly reason: string;
}

/** A recording is another one's copy. */
export const copyOf = (name: string): Trouble => ({ trouble: 'same-sound', name: plainName(name) });

/** A pile → what is in none of its attempts, and why: silent, unread, or a part of a recording that was cut or lost. */
export function leftOut({ silent, unread, copies, remarks }: Pile, language: Language): readonly LeftOut[] {
  const locale = localeOf(language);
  const { problems } = MESSAGES[language];
  return [
    ...silent.map(({ recording, reason }) => ({
      file: plainName(recording.name),
      student: recording.student,
      reason: problems.noPlaying(tellKept(reason, locale)),
    })),
    ...unread.map(({ name, student, reason }) => ({
      file: plainName(name),
      student,
      reason: tellTrouble(reason, language),
    })),
    ...copies.map(({ recording, of }) => ({
      file: plainName(recording.name),
      student: recording.student,
      reason: tellTrouble(copyOf(of), language),
    })),
    ...remarks.map(({ recording, remark }) => ({
      file: plainName(recording.name),
      student: recording.student,
      reason: tellNotice(remark, locale),
    })),
  ];
}
