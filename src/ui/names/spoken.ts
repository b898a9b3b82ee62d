import type { Assessment } from '../../engine/index.ts';
import { notice, strings, told } from '../language/index.ts';

/** What an attempt came to → a few words to be spoken: the verdict, its signs written out; nothing of the next step. */
export function spokenVerdict(assessment: Assessment): string {
  return writtenOut(
    assessment.kind === 'report' ? told(assessment.report).verdict : notice(assessment.reason),
  );
}

/** The same for whoever does not see the screen: what the verdict only counts, and the next step, too. */
export function spokenWhole(assessment: Assessment): string {
  if (assessment.kind !== 'report') return spokenVerdict(assessment);
  const { counted, nextStep } = told(assessment.report);
  const found = counted.map(({ text }) => writtenOut(text));
  const next = `${strings().report.next} ${writtenOut(nextStep)}`;
  return [spokenVerdict(assessment), ...(found.length > 0 ? [`${found.join('; ')}.`] : []), next].join(' ');
}

function writtenOut(text: string): string {
  const { signs, natural } = strings().names;
  const written: readonly (readonly [string, string])[] = [
    ['𝄪', signs['##']],
    ['♭♭', signs.bb],
    ['♯', signs['#']],
    ['♭', signs.b],
    ['♮', natural],
  ];
  return written.reduce((said, [sign, word]) => said.replaceAll(sign, word), text).replaceAll('–', ', ');
}
