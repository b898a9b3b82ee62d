import type { SituationName } from '../said/index.ts';
import { ABOUT_NOTES } from './notes.ts';
import { ABOUT_PROGRESS } from './progress.ts';
import { ABOUT_TIME } from './time.ts';
import type { Rule } from './types.ts';

export type { Rule } from './types.ts';

/** The table of what is said when: every situation has its row, or this does not compile. */
export const RULES: Readonly<Record<SituationName, Rule>> = {
  ...ABOUT_NOTES,
  ...ABOUT_TIME,
  ...ABOUT_PROGRESS,
};

/** Whether a situation blames notes that are wrong, missing or too many. One of another version blames nothing that is known. */
export function blamesNotes(situation: string): boolean {
  const rule = Object.hasOwn(RULES, situation) ? RULES[situation as SituationName] : null;
  return rule?.kind === 'fault' && rule.rank === RULES['wrong-notes'].rank;
}
