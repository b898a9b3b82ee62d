import type { Assessment } from '../../engine/index.ts';
import { notice, strings, told } from '../language/index.ts';

/** What an attempt came to → a few words to be spoken: the verdict, its signs written out; nothing of the next step. */
export function spokenVerdict(assessment: Assessment): string {
  const { signs, natural } = strings().names;
  const written: readonly (readonly [string, string])[] = [
    ['𝄪', signs['##']],
    ['♭♭', signs.bb],
    ['♯', signs['#']],
    ['♭', signs.b],
    ['♮', natural],
  ];
  const said = assessment.kind === 'report' ? told(assessment.report).verdict : notice(assessment.reason);
  return written.reduce((text, [sign, word]) => text.replaceAll(sign, word), said).replaceAll('–', ', ');
}
