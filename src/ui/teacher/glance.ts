import { shortfalls, type Criteria, type Level, type Shortfall } from '../../engine/index.ts';
import type { GivenFile, Playing, Student } from '../../io/teaching/index.ts';
import { kindOf } from './state/playings.ts';

/** The gravest trouble of a student's last attempts. */
export type Gravest =
  /** nothing could be recognised in so many recordings or stretches: to be listened to */
  | { readonly kind: 'untold'; readonly count: number }
  | { readonly kind: 'shortfall'; readonly playing: Playing; readonly shortfall: Shortfall }
  | { readonly kind: 'none' };

/** One student on one line. */
export interface Glance {
  readonly student: Student;
  /** attempts that are not answered yet, not heard, remarked on */
  readonly open: number;
  readonly unheard: number;
  readonly remarked: number;
  readonly gravest: Gravest;
  /** the greater, the more help is needed */
  readonly gravity: number;
  /** how each of the last weeks went at its best, oldest first; 'new': nothing came */
  readonly weeks: readonly Level[];
  /** when something came last, ms since 1970; 0: never */
  readonly lastMs: number;
}

export const WEEKS = 8;
const WEEK_MS = 7 * 24 * 3600 * 1000;

/** How grave each kind is where it is not narrow; common practice, no source: wrong notes before uneven ones. */
const GRAVITY: Readonly<Record<Shortfall['kind'], number>> = {
  notes: 8,
  unsure: 3,
  crossings: 5,
  evenness: 6,
  chords: 4,
  hands: 5,
  tempo: 2,
  touch: 2,
  loudness: 1,
  'evenness-unknown': 1,
  'tempo-unknown': 1,
};
const NARROW_SHARE = 0.4;
/** Where nothing can be told somebody may be lost altogether. */
const UNTOLD_GRAVITY = 9;
/** One note in six not right, or nothing that could be told: not to be overlooked among forty (common practice, no source). */
const GRAVE = GRAVITY.notes + 1 / 6;

/** Whether somebody needs help before the others, and is to stand out. */
export function isGrave({ gravity }: Pick<Glance, 'gravity'>): boolean {
  return gravity >= GRAVE;
}

/** A student, and all that is kept of theirs → their line. `nowMs`: the end of the last week. */
export function glanceAt(
  student: Student,
  { playings, files }: { readonly playings: readonly Playing[]; readonly files: readonly GivenFile[] },
  criteria: Criteria,
  nowMs: number,
): Glance {
  const own = playings.filter(({ studentId }) => studentId === student.id);
  const attempts = own.filter((one) => kindOf(one) !== 'other');
  const open = attempts.filter(({ answeredMs }) => answeredMs === null);
  const untold = untoldIn(student, open, own, files);
  const gravest = gravestOf(open, untold, criteria);
  const lastMs = Math.max(0, ...own.map(({ addedMs }) => addedMs));
  return {
    student,
    open: open.length,
    unheard: open.filter(({ heardMs }) => heardMs === null).length,
    remarked: open.filter(({ remarks }) => remarks > 0).length,
    gravest,
    gravity: gravityOf(gravest),
    weeks: weeksOf(attempts, criteria, nowMs),
    lastMs,
  };
}

/** The faults that most students of a class have in what is not answered yet: how many of them, most first. */
export function commonFaults(
  students: readonly Student[],
  playings: readonly Playing[],
  criteria: Criteria,
): readonly { readonly kind: Shortfall['kind']; readonly students: number }[] {
  const counts = new Map<Shortfall['kind'], number>();
  for (const { id } of students) {
    const open = playings.filter((one) => one.studentId === id && one.answeredMs === null);
    const kinds = new Set(open.flatMap((one) => shortfallsOf(one, criteria).map(({ kind }) => kind)));
    for (const kind of kinds) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  return [...counts]
    .map(([kind, count]) => ({ kind, students: count }))
    .filter(({ kind, students: count }) => count > 1 && GRAVITY[kind] > GRAVITY.tempo)
    .toSorted((a, b) => b.students - a.students || GRAVITY[b.kind] - GRAVITY[a.kind]);
}

function shortfallsOf({ summary }: Playing, criteria: Criteria): readonly Shortfall[] {
  return summary === null ? [] : shortfalls(summary, criteria, summary.targetBpm);
}

/** Stretches that cannot be told, and recordings in which nothing was found. */
function untoldIn(
  { id }: Student,
  open: readonly Playing[],
  own: readonly Playing[],
  files: readonly GivenFile[],
): number {
  const empty = files.filter(
    (file) =>
      file.studentId === id &&
      file.state === 'sorted' &&
      file.seenMs === undefined &&
      own.every(({ fileId }) => fileId !== file.id),
  );
  return open.filter(({ summary }) => summary === null).length + empty.length;
}

function gravestOf(open: readonly Playing[], untold: number, criteria: Criteria): Gravest {
  if (untold > 0) return { kind: 'untold', count: untold };
  const all = open.flatMap((playing) =>
    shortfallsOf(playing, criteria).map((shortfall) => ({ kind: 'shortfall' as const, playing, shortfall })),
  );
  const worst = all.toSorted((a, b) => gravityOf(b) - gravityOf(a))[0];
  return worst ?? { kind: 'none' };
}

function gravityOf(gravest: Gravest): number {
  if (gravest.kind === 'none') return 0;
  if (gravest.kind === 'untold') return UNTOLD_GRAVITY;
  const { shortfall, playing } = gravest;
  const whole = GRAVITY[shortfall.kind] * (shortfall.narrow ? NARROW_SHARE : 1);
  if (shortfall.kind !== 'notes') return whole;
  const faults = shortfall.wrong + shortfall.missed + shortfall.extra;
  return whole + Math.min(1, faults / Math.max(1, playing.summary?.expected ?? 1));
}

/** Per week the best of its attempts: ready, nearly, or not yet. */
function weeksOf(attempts: readonly Playing[], criteria: Criteria, nowMs: number): readonly Level[] {
  const levels = Array.from({ length: WEEKS }, (): Level => 'new');
  for (const playing of attempts) {
    const ago = Math.floor((nowMs - (playing.whenMs ?? playing.addedMs)) / WEEK_MS);
    const at = WEEKS - 1 - Math.max(0, ago);
    if (at < 0 || playing.summary === null) continue;
    const short = shortfallsOf(playing, criteria);
    const level: Level =
      short.length === 0 ? 'ready' : short.every(({ narrow }) => narrow) ? 'nearly' : 'not-yet';
    if (ORDER.indexOf(level) > ORDER.indexOf(levels[at]!)) levels[at] = level;
  }
  return levels;
}

const ORDER: readonly Level[] = ['new', 'not-yet', 'nearly', 'ready'];

/** How lines stand: who needs help most, by name, or what came last. */
export type GlanceOrder = 'help' | 'name' | 'last';

export function ordered(lines: readonly Glance[], order: GlanceOrder): readonly Glance[] {
  const byName = (a: Glance, b: Glance): number => a.student.name.localeCompare(b.student.name);
  return lines.toSorted((a, b) => {
    if (order === 'help') return b.gravity - a.gravity || b.open - a.open || byName(a, b);
    return order === 'last' ? b.lastMs - a.lastMs || byName(a, b) : byName(a, b);
  });
}
