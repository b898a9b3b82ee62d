import { mergePianos, settledTuning } from '../../../engine/index.ts';
import type { ExerciseChoice, PianoProfile, Report } from '../../../engine/index.ts';
import { asPianos, NEAR_CENTS, pianosOf, toldBy } from '../../../io/teaching/index.ts';
import type { Playing, SettledPiano } from '../../../io/teaching/index.ts';
import type { SortedAttempt, SortOptions } from '../../../io/sorting/index.ts';
import type { TeachingDevices } from './devices.ts';
import type { TeachingLists } from './lists.svelte.ts';
import { moved } from './places.ts';
import { handHabit } from './hand-habit.ts';
import { readingsOf } from './playings.ts';

/** So many of the last attempts teach of a piano; more only cost time. */
const MOST = 12;

/** How far recordings of a student are read anew. */
export interface Rereading {
  readonly done: number;
  readonly of: number;
}

/**
 * Students' pianos: what their attempts taught of keys and partials, and the tuning, which one correction settles for all recordings
 * that sound like it, past and to come. Nothing rejects.
 */
export class Pianos {
  /** by the student's name in the store */
  reading: Readonly<Record<string, Rereading>> = $state.raw({});
  readonly #devices: TeachingDevices;
  readonly #lists: TeachingLists;
  readonly #isOpen: (id: string) => boolean;

  /** `isOpen`: somebody has the attempt of that name before their eyes, and it stays as it is. */
  constructor(devices: TeachingDevices, lists: TeachingLists, isOpen: (id: string) => boolean) {
    this.#devices = devices;
    this.#lists = lists;
    this.#isOpen = isOpen;
  }

  /** How a recording of this student is to be listened to, with all that is known of hands and piano; never by itself (`not`). */
  async optionsFor(studentId: string, not: string | null = null): Promise<Partial<SortOptions>> {
    const { locale, criteria, own } = this.#devices;
    const [handsPlayed, piano] = await Promise.all([
      handHabit(this.#devices, this.#lists, studentId),
      this.#taught(studentId, not),
    ]);
    const [pianoCents = null, ...elsewhereCents] = this.#settled(studentId).map(({ cents }) => cents);
    const fingerings = this.#fingerings(studentId);
    return {
      locale: locale(),
      criteria: criteria(),
      handsPlayed,
      piano,
      pianoCents,
      elsewhereCents,
      fingerings,
      own: own(),
    };
  }

  /** Under which fingers a student plays: those that were assigned, and else those that the teacher keeps. */
  #fingerings(studentId: string): readonly ExerciseChoice[] {
    const assigned = this.#lists.students.find(({ id }) => id === studentId)?.assignment ?? [];
    const own = assigned.map(({ exercise }) => exercise).filter(({ fingering }) => fingering !== undefined);
    return [...own, ...this.#devices.fingerings.kept];
  }

  /**
   * The teacher said what an attempt was (`report`), or took that back (null): where it was another key than the tool took it for, a
   * piano of the student's is settled by it, beside those that are known, and what was read otherwise is read anew.
   */
  async corrected(playing: Playing, report: Report | null): Promise<void> {
    const { id, studentId, recognition } = playing;
    const before = this.#settled(studentId);
    if (report === null) {
      const taken = before.find(({ by }) => by === id);
      if (taken !== undefined) await this.forget(studentId, taken);
      return;
    }
    const cents = settledTuning(report);
    if (cents === null || recognition.choice?.key === report.exercise.key) return;
    await this.#settle(studentId, [{ cents, by: id }, ...before.filter(({ by }) => by !== id)], cents);
  }

  /** This piano's tuning is not known any more: its recordings are read as at first. */
  async forget(studentId: string, piano: SettledPiano): Promise<void> {
    const left = this.#settled(studentId).filter(({ by }) => by !== piano.by);
    await this.#settle(studentId, left, piano.cents);
  }

  /** Reads anew what a page that was closed had left. */
  async goOn(): Promise<void> {
    for (const student of this.#lists.students)
      for (const { cents } of pianosOf(student)) await this.#reread(student.id, cents, false);
  }

  async #settle(studentId: string, pianos: readonly SettledPiano[], cents: number): Promise<void> {
    if (await this.#lists.changeStudent(studentId, () => asPianos(pianos)))
      await this.#reread(studentId, cents, true);
  }

  #settled(studentId: string): readonly SettledPiano[] {
    const student = this.#lists.students.find(({ id }) => id === studentId);
    return student === undefined ? [] : pianosOf(student);
  }

  async #taught(studentId: string, not: string | null): Promise<PianoProfile | null> {
    const mine = this.#lists.playings
      .filter((one) => one.studentId === studentId && one.id !== not && one.summary !== null)
      .toSorted((a, b) => (a.whenMs ?? 0) - (b.whenMs ?? 0))
      .slice(-MOST);
    const reports = await Promise.all(
      mine.map(({ id }) => this.#lists.try(() => this.#devices.store.reports(id))),
    );
    return reports.reduce<PianoProfile | null>(
      (known, one) => (one?.taught === undefined ? known : mergePianos(known, one.taught)),
      null,
    );
  }

  /** `all`: those too that could not be told at all. */
  async #reread(studentId: string, cents: number, all: boolean): Promise<void> {
    const stale: Playing[] = [];
    for (const playing of this.#lists.playings) {
      if (playing.studentId !== studentId || !isTools(playing) || this.#isOpen(playing.id)) continue;
      const reports = await this.#lists.try(() => this.#devices.store.reports(playing.id));
      const own = reports?.own ?? null;
      if (own === null ? all && readingsOf(playing).length > 0 : this.#isStale(studentId, own, cents))
        stale.push(playing);
    }
    for (const [done, playing] of stale.entries()) {
      this.reading = { ...this.reading, [studentId]: { done, of: stale.length } };
      const isRead = await this.#readAgain(playing).catch(() => false);
      // Called off, or out of memory: it is gone on with when the page is opened again.
      if (!isRead) break;
    }
    this.reading = Object.fromEntries(Object.entries(this.reading).filter(([id]) => id !== studentId));
  }

  /**
   * A recording of this piano that was read as another key, and does not sound like another of the student's as it was read; where
   * this piano is not known any more, every one of it.
   */
  #isStale(studentId: string, { tuning }: Report, cents: number): boolean {
    const off = tuning.cents - cents;
    const semitones = Math.round(off / 100);
    if (Math.abs(off - 100 * semitones) > NEAR_CENTS) return false;
    const known = this.#settled(studentId);
    if (known.every((one) => one.cents !== cents)) return true;
    const isNearer = known.some(
      (one) => Math.abs(tuning.cents - one.cents) < Math.abs(off - 100 * semitones),
    );
    return semitones !== 0 && !isNearer;
  }

  /** False: nothing was read. */
  async #readAgain({ id, name, studentId }: Playing): Promise<boolean> {
    const { store, sorters } = this.#devices;
    const sound = await store.sound(id);
    if (sound === null) return true;
    const options = await this.optionsFor(studentId, id);
    const { attempts } = await sorters.sort(new Blob([sound.bytes]), name, options);
    const [found] = attempts;
    const now = this.#lists.playings.find((one) => one.id === id);
    // In two, or in none: it stays as it was found in its own recording.
    if (found === undefined || attempts.length > 1 || now === undefined || !isTools(now)) return true;
    await this.#lists.try(() => this.#keep(id, found));
    return true;
  }

  async #keep(id: string, { recognition, report, reason, alone, taught }: SortedAttempt): Promise<void> {
    const { store } = this.#devices;
    const learnt = { ...(alone !== undefined && { alone }), ...(taught !== undefined && { taught }) };
    await store.putReports(id, { own: report, chosen: null, ...learnt });
    await this.#lists.changePlayings([id], () => ({ recognition, reason, ...toldBy(report) }));
    if (report === null) return;
    const said = await store.said(id);
    if (said.remarks.length + said.corrections.length > 0)
      await store.changeSaid(id, (now) => moved(now, report));
  }
}

/** As the tool took it: not what a student sent, nor what the teacher chose. */
function isTools({ fileId, chosen }: Playing): boolean {
  return fileId !== '' && chosen === null;
}
