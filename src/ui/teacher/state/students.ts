import { folded, likelyName, nameIn, namesAmong, whoIs, whoseIs } from '../../../io/teaching/index.ts';
import type { GivenFile, Known, Student, Whose } from '../../../io/teaching/index.ts';

/** Somebody known, as their recordings are told by. */
type KnownStudent = Known & { readonly id: string };

/** Students whom the teacher knows: not those whose names were only proposed, nor those without one. */
function rosterOf(students: readonly Student[]): readonly KnownStudent[] {
  return students
    .filter(({ name, proposed }) => name !== '' && proposed !== true)
    .map(({ id, name, aliases = [] }) => ({ id, name, aliases }));
}

/** Path of a recording → whose it is, among the students who are known. */
export function studentOf(path: string, students: readonly Student[]): Whose<KnownStudent> {
  return whoseIs(path, rosterOf(students));
}

/** A name as somebody wrote it → who that is. */
export function studentCalled(name: string, students: readonly Student[]): Whose<KnownStudent> {
  return name.trim() === '' ? { kind: 'nobody' } : whoIs(name, rosterOf(students));
}

/** Known students who may be the one whose name was proposed. */
export function likeStudents({ name }: Student, students: readonly Student[]): readonly KnownStudent[] {
  const told = whoIs(name, rosterOf(students));
  return told.kind === 'proposed' ? told.likely : [];
}

/** Students whose names were proposed, among all that came in → what each is most likely called, by the student's id. */
export function proposedNames(
  students: readonly Student[],
  files: readonly GivenFile[],
): ReadonlyMap<string, string> {
  const pathsOf = (id: string): readonly string[] =>
    files.filter(({ studentId }) => studentId === id).map(({ path }) => path);
  const among = namesAmong(students.map(({ id, name }) => ({ name, count: pathsOf(id).length })));
  const isFolder = (id: string): boolean => pathsOf(id).some((path) => nameIn(path).from === 'folder');
  return new Map(
    students
      .filter(({ proposed }) => proposed === true)
      .map(({ id, name }) => [id, name.includes(' ') ? likelyName(name, isFolder(id), among) : name]),
  );
}

/** The one of that name, however it is written, among all but `not`. */
export function sameName(
  name: string,
  students: readonly Student[],
  not: string | null = null,
): Student | undefined {
  const wanted = folded(name);
  return students.find((one) => one.id !== not && folded(one.name) === wanted);
}

/** Aliases with some more, each once and none that is the name itself. */
export function withAliases(
  name: string,
  aliases: readonly string[],
  more: readonly string[],
): readonly string[] {
  const all = new Map([...aliases, ...more].map((one) => [folded(one), one]));
  return [...all].filter(([known]) => known !== '' && known !== folded(name)).map(([, one]) => one);
}
