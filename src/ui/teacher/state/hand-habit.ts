import { handsPlayedIn, type HandPlayed } from '../../../engine/index.ts';
import type { TeachingDevices } from './devices.ts';
import type { TeachingLists } from './lists.svelte.ts';

/** So many of the last corrections tell a habit; more only cost time. */
const MOST = 40;

/**
 * Where each hand of a student is known to have played: from attempts of which the teacher said what they were, or the student, who
 * sent them. It settles nothing, but makes one hand the likelier in what is sorted from now on.
 */
export async function handHabit(
  { store }: Pick<TeachingDevices, 'store'>,
  { playings }: Pick<TeachingLists, 'playings'>,
  studentId: string,
): Promise<readonly HandPlayed[]> {
  const said = playings.filter(
    (one) => one.studentId === studentId && (one.chosen !== null || one.fileId === ''),
  );
  const reports = await Promise.all(said.slice(-MOST).map(({ id }) => store.reports(id)));
  return handsPlayedIn(reports.flatMap(({ own, chosen }) => chosen ?? own ?? []));
}
