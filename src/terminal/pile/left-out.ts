import { tellKept, tellNotice } from '../../engine/index.ts';
import type { Language } from '../../engine/index.ts';
import { plainName } from '../../io/check/index.ts';
import { tellTrouble } from '../../io/troubles/index.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import { MESSAGES, localeOf } from '../language/index.ts';
import type { Pile, Recording } from './types.ts';

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
  const of = ({ name, student }: Pick<Recording, 'name' | 'student'>, reason: string): LeftOut => ({
    file: plainName(name),
    student,
    reason,
  });
  return [
    ...silent.map(({ recording, reason }) => of(recording, problems.noPlaying(tellKept(reason, locale)))),
    ...unread.map((one) => of(one, tellTrouble(one.reason, language))),
    ...copies.map((one) => of(one.recording, tellTrouble(copyOf(one.of), language))),
    ...remarks.map(({ recording, remark }) => of(recording, tellNotice(remark, locale))),
  ];
}
