import { pianosOfBoth, type GivenFile, type Playing, type Student } from '../../../io/teaching/index.ts';
import type { TeachingLists } from './lists.svelte.ts';
import { sameName, studentOf, withAliases } from './students.ts';

/** Recordings that were given to somebody else, as they were before. */
export interface GivenAway {
  readonly to: Student;
  /** nothing was theirs before */
  readonly isNew: boolean;
  readonly students: readonly Student[];
  readonly playings: readonly Playing[];
  readonly files: readonly GivenFile[];
}

const idsOf = (all: readonly { readonly id: string }[]): readonly string[] => all.map(({ id }) => id);

/** Whose recordings are whose: proposed by their names, confirmed, put together and taken apart by the teacher. Nothing rejects. */
export class Owners {
  /** given to somebody else last, and can be given back */
  given: GivenAway | null = $state.raw(null);
  readonly #lists: TeachingLists;
  readonly #newId: () => string;
  readonly #now: () => number;

  constructor(lists: TeachingLists, newId: () => string, now: () => number) {
    this.#lists = lists;
    this.#newId = newId;
    this.#now = now;
  }

  /** Whose a recording or a letter is: somebody known, somebody whose name is proposed from now on, or nobody. */
  async studentFor(whose: ReturnType<typeof studentOf>): Promise<Student> {
    if (whose.kind === 'known') {
      const known = this.#lists.students.find(({ id }) => id === whose.who.id);
      if (known !== undefined) return known;
    }
    const name = whose.kind === 'proposed' ? whose.name : '';
    // One who is known may be called so too, and is not taken for it unasked.
    const open = this.#lists.students.filter((one) => one.proposed === true || one.name === '');
    return sameName(name, open) ?? (await this.#newStudent(name, name !== ''));
  }

  async #newStudent(name: string, proposed: boolean): Promise<Student> {
    const id = this.#newId();
    const student: Student = {
      id,
      name,
      words: '',
      message: '',
      assignment: [],
      sent: [],
      deletedMs: null,
      ...(proposed && { proposed }),
    };
    await this.#lists.addStudents([student]);
    return student;
  }

  /** Calls a student so, and knows them by the old name too; one of that name already takes the recordings over. */
  async rename(student: Student, name: string): Promise<void> {
    const tidy = name.trim();
    const same = tidy === '' ? undefined : sameName(tidy, this.#lists.students, student.id);
    const former = [student.name, ...(student.aliases ?? [])];
    const isNamed = (one: Student): Partial<Student> => ({
      proposed: false,
      aliases: withAliases(tidy, one.aliases ?? [], former),
    });
    if (same === undefined) {
      await this.#lists.changeStudent(student.id, (one) => ({ name: tidy, ...isNamed(one) }));
      return;
    }
    const mine = (one: { readonly studentId: string }): boolean => one.studentId === student.id;
    await this.#give(this.#lists.playings.filter(mine), this.#lists.files.filter(mine), same);
    await this.#lists.changeStudent(same.id, (one) => ({ ...isNamed(one), ...pianosOfBoth(one, student) }));
    await this.#lists.forgetIfEmpty(student);
  }

  /** These recordings are somebody else's, by name. */
  async moveTo(fileIds: readonly string[], name: string): Promise<void> {
    const to = sameName(name, this.#lists.students) ?? (await this.#newStudent(name.trim(), false));
    const files = this.#lists.files.filter(({ id }) => fileIds.includes(id));
    const before = this.#lists.students.filter(({ id }) => files.some(({ studentId }) => studentId === id));
    const playings = this.#lists.playings.filter(({ fileId }) => fileIds.includes(fileId));
    await this.#give(playings, files, to);
    for (const student of before) if (student.id !== to.id) await this.#lists.forgetIfEmpty(student);
  }

  /** Gives back what was given to somebody else last. */
  async giveBack(): Promise<void> {
    const what = this.given;
    this.given = null;
    if (what === null) return;
    const gone = what.students.filter(({ id }) => this.#lists.students.every((one) => one.id !== id));
    await this.#lists.addStudents(gone);
    const before = [...what.playings, ...what.files];
    const back = ({ id, studentId }: { readonly id: string; readonly studentId: string }) => ({
      studentId: before.find((one) => one.id === id)?.studentId ?? studentId,
    });
    await this.#lists.changePlayings(idsOf(what.playings), back);
    await this.#lists.changeFiles(idsOf(what.files), back);
    const { id, aliases = [] } = what.to;
    await this.#lists.changeStudent(id, () => ({ aliases }));
    const empty = this.#lists.students.find((one) => one.id === id);
    if (empty !== undefined && what.isNew) await this.#lists.forgetIfEmpty(empty);
  }

  async #give(playings: readonly Playing[], files: readonly GivenFile[], to: Student): Promise<void> {
    const mine = ({ id }: Student): boolean =>
      [...playings, ...files].some(({ studentId }) => studentId === id);
    const isNew = this.#lists.allOf(to).files.length + this.#lists.allOf(to).playings.length === 0;
    this.given = { to, isNew, students: this.#lists.students.filter(mine), playings, files };
    const [addedMs, studentId] = [this.#now(), to.id];
    await this.#lists.changePlayings(idsOf(playings), () => ({ studentId, addedMs }));
    await this.#lists.changeFiles(idsOf(files), () => ({ studentId }));
  }
}
