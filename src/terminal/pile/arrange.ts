import { changesSince, exerciseId, mergeHands } from '../../engine/index.ts';
import type { HandsAlone, Report } from '../../engine/index.ts';
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
type SortedOne = { readonly recording: Recording; readonly sorted: Sorted };

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
function inTime({ recording: a }: SortedOne, { recording: b }: SortedOne): number {
  const [x, y] = [a.whenMs ?? Infinity, b.whenMs ?? Infinity];
  return x === y ? a.name.localeCompare(b.name, 'en', { numeric: true }) : x - y;
}

/** Whether two recordings are of one student and one day (of the clock here): of one piano, most likely. */
export function isSameDay(one: Recording, other: Recording): boolean {
  return one.student === other.student && dayOf(one) !== null && dayOf(one) === dayOf(other);
}

function dayOf({ whenMs }: Recording): number | null {
  return whenMs === null ? null : new Date(whenMs).setHours(0, 0, 0, 0);
}

/**
 * Recordings, each sorted by itself → for each, in the same order, what the others of its student and day taught of hands alone;
 * null where they taught nothing, or nothing in it was played by both hands.
 */
export function aloneElsewhere(outcomes: readonly Outcome[]): readonly (HandsAlone | null)[] {
  const inOrder = outcomes.flatMap((one) => ('sorted' in one ? [one] : [])).sort(inTime);
  return outcomes.map((one) => {
    if (!('sorted' in one) || !hasBoth(one)) return null;
    return inOrder
      .filter((other) => other !== one && isSameDay(other.recording, one.recording))
      .flatMap(({ sorted }) => sorted.attempts)
      .reduce<HandsAlone | null>((known, { alone }) => mergeHands(known, alone ?? null), null);
  });
}

function hasBoth({ sorted }: SortedOne): boolean {
  return sorted.attempts.some(({ recognition }) => recognition.choice?.hands === 'together');
}
