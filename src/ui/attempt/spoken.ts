import type { Assessment } from '../../engine/index.ts';

const SIGNS: readonly (readonly [string, string])[] = [
  ['𝄪', ' double sharp'],
  ['♭♭', ' double flat'],
  ['♯', ' sharp'],
  ['♭', ' flat'],
  ['♮', ' natural'],
];

/** What an attempt came to → a few words to be spoken: the verdict, its signs written out; no figures of the next step. */
export function spokenVerdict(assessment: Assessment): string {
  const words = assessment.kind === 'report' ? assessment.report.words.verdict : assessment.reason;
  return SIGNS.reduce((text, [sign, word]) => text.replaceAll(sign, word), words).replaceAll('–', ', ');
}
