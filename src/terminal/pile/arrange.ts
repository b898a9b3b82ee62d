import { changesSince, exerciseId } from '../../engine/index.ts';
import type { Report } from '../../engine/index.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import type { Collected } from './collect.ts';
import type { Outcome, Pile, PileAttempt, PileStudent, Recording, Sorted } from './types.ts';

/** Recordings sorted one by one → the attempts of each student in the order in which they were played, each against the one before. */
export function arrange(outcomes: readonly Outcome[], refused: Collected['refused'] = []): Pile {
  const all = outcomes.flatMap((one) => ('sorted' in one ? [one] : []));
  const copies = copiesIn(all);
  const sorted = all.filter(({ recording }) => !copies.some((copy) => copy.recording === recording));
  const names = [...new Set(sorted.map(({ recording }) => recording.student))].sort(byName);
  const students = names.map((name): PileStudent => ({
    name,
    attempts: attemptsOf(sorted.filter(({ recording }) => recording.student === name)),
  }));
  return {
    students: students.filter(({ attempts }) => attempts.length > 0),
    silent: sorted.flatMap(({ recording, sorted: { attempts, reason } }) =>
      attempts.length === 0 ? [{ recording, reason }] : [],
    ),
    unread: [
      ...outcomes.flatMap((one) => ('sorted' in one ? [] : [unreadOf(one.recording, one.trouble)])),
      ...refused.map(({ name, reason }) => ({ name, student: '', reason })),
    ],
    copies,
    remarks: sorted.flatMap(({ recording, sorted: { remarks } }) =>
      remarks.map((remark) => ({ recording, remark })),
    ),
  };
}

/** Of recordings with the same bytes the first is listed, the others are its copies. */
function copiesIn(sorted: readonly SortedOne[]): Pile['copies'] {
  const first = new Map<string, Recording>();
  return sorted.flatMap(({ recording, sorted: { print } }) => {
    const one = first.get(print);
    if (one === undefined) first.set(print, recording);
    return one === undefined ? [] : [{ recording, of: one.name }];
  });
}

/** What is said of a file without its name, which stands before it. */
function unreadOf({ name, student }: Recording, why: Trouble): Pile['unread'][number] {
  return { name, student, reason: why.trouble === 'within' && why.name === name ? why.of : why };
}

/** Nobody's recordings come last. */
function byName(a: string, b: string): number {
  if (a === '' || b === '') return Number(a === '') - Number(b === '');
  return a.localeCompare(b, 'en');
}

/** A recording that was sorted. */
export type SortedOne = { readonly recording: Recording; readonly sorted: Sorted };

function attemptsOf(recordings: readonly SortedOne[]): readonly PileAttempt[] {
  const inOrder = [...recordings].sort(inTime);
  const last = new Map<string, { readonly report: Report; readonly whenMs: number | null }>();
  return inOrder.flatMap(({ recording, sorted }) =>
    sorted.attempts.map((found): PileAttempt => {
      const { report } = found;
      if (report === null) return { recording, found, since: null };
      const id = exerciseId(report.exercise);
      const before = last.get(id);
      last.set(id, { report, whenMs: recording.whenMs });
      const since = before === undefined ? null : { ...before, changes: changesSince(before.report, report) };
      return { recording, found, since };
    }),
  );
}

/** By their time, those without one last; of one time by their names, numbers as numbers. */
export function inTime({ recording: a }: SortedOne, { recording: b }: SortedOne): number {
  const [x, y] = [a.whenMs ?? Infinity, b.whenMs ?? Infinity];
  return x === y ? a.name.localeCompare(b.name, 'en', { numeric: true }) : x - y;
}
