import type {
  Changed,
  FieldChange,
  GivenFile,
  Playing,
  Student,
  TeachingStore,
} from '../../../io/teaching/index.ts';
import { troubleOf, type Trouble } from '../../../io/troubles/index.ts';

/** Something deleted that can still be brought back. */
export interface Deleted {
  readonly kind: 'student' | 'recording' | 'attempt';
  readonly name: string;
  readonly students: readonly string[];
  readonly files: readonly string[];
  readonly playings: readonly string[];
}

const isThere = ({ deletedMs }: { readonly deletedMs: number | null }): boolean => deletedMs === null;

/** Students, their recordings and what was found in them: as the page shows them, and as they are stored. Nothing rejects. */
export class TeachingLists {
  #students: readonly Student[] = $state.raw([]);
  #files: readonly GivenFile[] = $state.raw([]);
  #playings: readonly Playing[] = $state.raw([]);
  /** what did not work last */
  trouble: Trouble | null = $state.raw(null);
  deleted: Deleted | null = $state.raw(null);
  /** bytes that all of this address takes, and that the browser allows */
  room: Awaited<ReturnType<TeachingStore['room']>> | null = $state.raw(null);
  readonly #store: TeachingStore;
  readonly #now: () => number;

  constructor(store: TeachingStore, now: () => number) {
    this.#store = store;
    this.#now = now;
  }

  /** by name */
  readonly students: readonly Student[] = $derived(
    this.#students.filter(isThere).toSorted((a, b) => a.name.localeCompare(b.name)),
  );
  readonly files: readonly GivenFile[] = $derived(this.#files.filter(isThere));
  readonly playings: readonly Playing[] = $derived(this.#playings.filter(isThere));

  async load(): Promise<void> {
    const found = await this.try(() => this.#store.load());
    if (found !== undefined) {
      this.#students = found.students;
      this.#files = found.files;
      this.#playings = found.playings;
    }
    await this.look();
  }

  /** What another window changed is shown here too. */
  async follow(changed: Changed): Promise<void> {
    const now = await this.try(() => this.#store.records(changed));
    if (now === undefined) return;
    this.#students = followed(this.#students, changed.students, now.students);
    this.#files = followed(this.#files, changed.files, now.files);
    this.#playings = followed(this.#playings, changed.playings, now.playings);
  }

  async look(): Promise<void> {
    this.room = (await this.try(() => this.#store.room())) ?? this.room;
  }

  dismissTrouble(): void {
    this.trouble = null;
  }

  /** Changes some fields of a student, as they stand where they are kept. False: they could not be kept, and are not shown. */
  async changeStudent(id: string, fields: (now: Student) => Partial<Student>): Promise<boolean> {
    const all = this.#students;
    const changed = await this.#change(all, [id], fields, (changes) => this.#store.changeStudents(changes));
    this.#students = replaced(this.#students, changed ?? []);
    return changed !== null;
  }

  /** The same for files. */
  async changeFiles(
    ids: readonly string[],
    fields: (now: GivenFile) => Partial<GivenFile>,
  ): Promise<boolean> {
    const changed = await this.#change(this.#files, ids, fields, (changes) =>
      this.#store.changeFiles(changes),
    );
    this.#files = replaced(this.#files, changed ?? []);
    return changed !== null;
  }

  /** The same for attempts. */
  async changePlayings(ids: readonly string[], fields: (now: Playing) => Partial<Playing>): Promise<boolean> {
    const all = this.#playings;
    const changed = await this.#change(all, ids, fields, (changes) => this.#store.changePlayings(changes));
    this.#playings = replaced(this.#playings, changed ?? []);
    return changed !== null;
  }

  /** Lets go of recordings as they came; what was found in them stays. */
  async letGo(files: readonly GivenFile[]): Promise<void> {
    await this.try(() => this.#store.letGo(namesOf(files)));
    await this.follow({ students: [], files: namesOf(files), playings: [] });
    await this.look();
  }

  /** Puts in students who are new. */
  async addStudents(students: readonly Student[]): Promise<void> {
    this.#students = replaced(this.#students, students);
    await this.try(() => this.#store.addStudents(students));
  }

  /** Lets go of a student who has nothing here any more. */
  async forgetIfEmpty(student: Student): Promise<void> {
    const { files, playings } = this.allOf(student);
    if (files.length + playings.length > 0) return;
    this.#students = this.#students.filter(({ id }) => id !== student.id);
    await this.try(() => this.#store.end({ students: [student.id] }));
  }

  /** Puts in files that are new. */
  async addFiles(files: readonly GivenFile[]): Promise<void> {
    this.#files = replaced(this.#files, files);
    await this.try(() => this.#store.addFiles(files));
  }

  /** Shows what is stored already, or will be. */
  show(files: readonly GivenFile[], playings: readonly Playing[]): void {
    this.#files = replaced(this.#files, files);
    this.#playings = replaced(this.#playings, playings);
  }

  /** Deletes so that it can be undone; what was deleted before that is ended. */
  async remove(what: Deleted): Promise<void> {
    await this.settle();
    this.deleted = what;
    await this.#mark(what, this.#now());
  }

  async restore(): Promise<void> {
    const what = this.deleted;
    this.deleted = null;
    if (what !== null) await this.#mark(what, null);
  }

  /** Ends for good what was deleted last. */
  async settle(): Promise<void> {
    const what = this.deleted;
    if (what === null) return;
    this.deleted = null;
    const not = (ids: readonly string[]) => (one: { readonly id: string }) => !ids.includes(one.id);
    this.#students = this.#students.filter(not(what.students));
    this.#files = this.#files.filter(not(what.files));
    this.#playings = this.#playings.filter(not(what.playings));
    await this.try(() => this.#store.end(what));
    await this.look();
  }

  /** Whether anything of a student's could be listened to, or waits for it. */
  hasSound({ id }: Student): boolean {
    const isRead = ({ state }: GivenFile): boolean => state === 'waiting' || state === 'sorted';
    return (
      this.files.some((one) => one.studentId === id && isRead(one)) ||
      this.playings.some(({ studentId }) => studentId === id)
    );
  }

  /** All that belongs to a student, to be deleted. */
  allOf(student: Student): Deleted {
    const mine = (one: { readonly studentId: string }): boolean => one.studentId === student.id;
    return {
      kind: 'student',
      name: student.name,
      students: [student.id],
      files: this.files.filter(mine).map(({ id }) => id),
      playings: this.playings.filter(mine).map(({ id }) => id),
    };
  }

  /** Undefined where it failed; the failure is told. */
  async try<T>(act: () => Promise<T>): Promise<T | undefined> {
    try {
      return await act();
    } catch (error) {
      this.trouble = troubleOf(error);
      return undefined;
    }
  }

  async #mark({ students, files, playings }: Deleted, deletedMs: number | null): Promise<void> {
    for (const id of students) await this.changeStudent(id, () => ({ deletedMs }));
    await this.changePlayings(playings, () => ({ deletedMs }));
    await this.changeFiles(files, () => ({ deletedMs }));
  }

  /** What is changed so, as it is kept; what the device had no room for is here alone. Null: it could not be kept. */
  async #change<T extends { readonly id: string }>(
    all: readonly T[],
    ids: readonly string[],
    fields: (now: T) => Partial<T>,
    write: (changes: readonly FieldChange<T>[]) => Promise<readonly T[]>,
  ): Promise<readonly T[] | null> {
    const kept = await this.try(() => write(ids.map((id) => ({ id, fields }))));
    if (kept === undefined) return null;
    const known = namesOf(kept);
    const here = all.filter(({ id }) => ids.includes(id) && !known.includes(id));
    return [...kept, ...here.map((one) => ({ ...one, ...fields(one) }))];
  }
}

const namesOf = (all: readonly { readonly id: string }[]): readonly string[] => all.map(({ id }) => id);

/** What is shown, with those of some names as they are kept now; what is not kept any more goes, what is newer here stays. */
function followed<T extends { readonly id: string; readonly version?: number }>(
  all: readonly T[],
  ids: readonly string[],
  now: readonly T[],
): readonly T[] {
  const kept = namesOf(now);
  const left = all.filter(({ id }) => !ids.includes(id) || kept.includes(id));
  const versionHere = (id: string): number => left.find((one) => one.id === id)?.version ?? -1;
  return replaced(
    left,
    now.filter((one) => (one.version ?? 0) > versionHere(one.id)),
  );
}

/** Things with some put in the place of those of the same name, new ones at the end. */
function replaced<T extends { readonly id: string }>(all: readonly T[], some: readonly T[]): readonly T[] {
  const byId = new Map(some.map((one) => [one.id, one]));
  const known = new Set(all.map(({ id }) => id));
  return [...all.map((one) => byId.get(one.id) ?? one), ...some.filter(({ id }) => !known.has(id))];
}
