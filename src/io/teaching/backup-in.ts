import { readPiano } from '../check/index.ts';
import { unpacked } from '../history/packed.ts';
import { tarMembers, TarError } from '../history/tar.ts';
import { StorageError } from '../database/index.ts';
import { mimeOf } from '../encode/index.ts';
import type { Remark, SoundFile } from '../review/types.ts';
import { checkBackup, checkBackupAttempt } from './backup-check.ts';
import type { BackupAttempt, BackupHead } from './backup-check.ts';
import { folded } from './names.ts';
import { pianosOfBoth } from './pianos.ts';
import { toldBy } from './told.ts';
import type {
  BackupOutcome,
  GivenFile,
  NewPlaying,
  Said,
  Student,
  TeachingStore,
  Template,
} from './types.ts';

/** The longest recording that a backup holds, and some. */
const MOST_BYTES = 256 * 1024 * 1024;

/**
 * A backup → what of it is not here yet, put in; nothing that is here is overwritten. A student of the same name is the same.
 *
 * @throws StorageError where the file is no backup, or a newer one; what cannot be read of it is counted.
 */
export async function readBackup(
  store: TeachingStore,
  file: Blob,
  onProgress: (share: number) => void,
): Promise<BackupOutcome> {
  let merging: Merging | null = null;
  let refused = 0;
  let passages: readonly unknown[] = [];
  try {
    for await (const { name, bytes } of tarMembers(await unpacked(file, onProgress), MOST_BYTES)) {
      if (merging === null) {
        if (name !== 'evenfall-teaching.json' || bytes === null)
          throw new StorageError({ trouble: 'no-backup' });
        const head = checkBackup(bytes);
        passages = head.passages ?? [];
        merging = await beginMerging(store, head);
      } else if (bytes === null || !(await merging.take(name, bytes))) refused += 1;
    }
  } catch (error) {
    const isDamaged = error instanceof TarError || error instanceof TypeError;
    if (!isDamaged) throw error;
    if (merging === null) throw new StorageError({ trouble: 'no-backup' });
    refused += 1;
  }
  if (merging === null) throw new StorageError({ trouble: 'no-backup' });
  return { ...(await merging.end()), refused, ...(passages.length > 0 && { passages }) };
}

interface Merging {
  /** False: it is nothing that belongs here. */
  take(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<boolean>;
  end(): Promise<Omit<BackupOutcome, 'refused' | 'passages'>>;
}

interface Open {
  readonly attempt: BackupAttempt;
  sound: SoundFile | null;
  example: SoundFile | null;
  readonly voices: Map<number, SoundFile>;
}

async function beginMerging(store: TeachingStore, head: BackupHead): Promise<Merging> {
  const here = await store.load();
  await putTemplates(store, head);
  const idOf = await putStudents(store, head, here.students);
  const studentOf = (id: string): string => idOf.get(id) ?? id;
  const isHere = new Set([...here.files, ...here.playings].map(({ id }) => id));
  const newFiles = head.files.filter(({ id }) => !isHere.has(id));
  const blobs = new Set<string>();
  const changed = { students: [...new Set(idOf.values())], files: [] as string[], playings: [] as string[] };
  let known = 0;
  let open: Open | null = null;

  const close = async (): Promise<void> => {
    const done = open;
    open = null;
    const playing = head.playings.find(({ id }) => id === done?.attempt.id);
    if (done === null || playing === undefined) return;
    const said = saidOf(done);
    if (isHere.has(playing.id)) {
      known += 1;
      const now = await store.changeSaid(playing.id, (before) => withMissing(before, said));
      const { heardMs, answeredMs } = playing;
      await store.changePlayings([
        {
          id: playing.id,
          fields: (before) => ({
            remarks: now.remarks.length + now.corrections.length,
            heardMs: before.heardMs ?? heardMs,
            answeredMs: before.answeredMs ?? answeredMs,
          }),
        },
      ]);
    } else {
      const { own, chosen } = done.attempt;
      const taught = readPiano(done.attempt.taught);
      const added: NewPlaying = {
        playing: {
          ...playing,
          studentId: studentOf(playing.studentId),
          remarks: said.remarks.length + said.corrections.length,
          soundBytes: done.sound?.bytes.byteLength ?? 0,
          deletedMs: null,
          ...toldBy(chosen ?? own),
        },
        reports: { own, chosen, ...(taught !== null && { taught }) },
        sound: done.sound,
      };
      await store.addPlayings([added]);
      await store.changeSaid(playing.id, () => said);
    }
    changed.playings.push(playing.id);
  };

  const take = async (name: string, bytes: Uint8Array<ArrayBuffer>): Promise<boolean> => {
    const [, at, part = ''] = /^(?:attempts|recordings)\/(\d{1,6})(?:\/(.+))?$/.exec(name) ?? [];
    if (at === undefined) return false;
    if (name.startsWith('recordings/')) {
      const file = head.files[Number(at)];
      const wanted = newFiles.find(({ id }) => id === file?.id);
      if (wanted === undefined) return file !== undefined;
      blobs.add(wanted.id);
      await store.addFile(fileOf(wanted, studentOf, true), new Blob([bytes]));
      return true;
    }
    if (part === 'attempt.json') {
      await close();
      const attempt = checkBackupAttempt(bytes);
      if (attempt !== null) open = { attempt, sound: null, example: null, voices: new Map() };
      return attempt !== null;
    }
    const [, kind, nth] = /^(sound|example|voice-(\d{1,4}))\.(wav|webm)$/.exec(part) ?? [];
    if (kind === undefined || open === null) return false;
    const sound: SoundFile = { bytes, mime: mimeOf(part) };
    if (kind === 'example') open.example = sound;
    else if (nth === undefined) open.sound = sound;
    else open.voices.set(Number(nth), sound);
    return true;
  };

  const end = async (): Promise<Omit<BackupOutcome, 'refused'>> => {
    await close();
    const without = newFiles.filter(({ id }) => !blobs.has(id));
    await store.addFiles(without.map((file) => fileOf(file, studentOf, false)));
    changed.files.push(...newFiles.map(({ id }) => id));
    const students = changed.students.filter((id) => here.students.every((one) => one.id !== id)).length;
    return { students, files: newFiles.length, attempts: changed.playings.length - known, known, changed };
  };
  return { take, end };
}

/** Those of whose words and exercises there are none here yet. */
async function putTemplates(store: TeachingStore, { templates = [] }: BackupHead): Promise<void> {
  const sayOf = ({ words, assignment }: Omit<Template, 'id' | 'used'>): string =>
    JSON.stringify([words, assignment ?? null]);
  const here = new Set((await store.templates()).flatMap((one) => [one.id, sayOf(one)]));
  await store.addTemplates(templates.filter((one) => !here.has(one.id) && !here.has(sayOf(one))));
}

/** Students who are not here are put in; one of the same name is the same → the name here of each there. */
async function putStudents(
  store: TeachingStore,
  { students }: BackupHead,
  here: readonly Student[],
): Promise<ReadonlyMap<string, string>> {
  const idOf = new Map<string, string>();
  for (const student of students) {
    const same =
      here.find(({ id }) => id === student.id) ??
      here.find(({ name }) => name !== '' && folded(name) === folded(student.name));
    idOf.set(student.id, same?.id ?? student.id);
    if (same === undefined) await store.addStudents([{ ...student, deletedMs: null }]);
    else {
      await store.changeStudents([
        {
          id: same.id,
          fields: (now) => ({
            aliases: [...new Set([...(now.aliases ?? []), ...(student.aliases ?? [])])],
            sent: [...now.sent, ...student.sent.filter(({ id }) => now.sent.every((one) => one.id !== id))],
            assignment: now.assignment.length === 0 ? student.assignment : now.assignment,
            words: now.words === '' ? student.words : now.words,
            ...pianosOfBoth(now, student),
            message: now.message === '' ? student.message : now.message,
          }),
        },
      ]);
    }
  }
  return idOf;
}

/** One that waits and came without its sound cannot be sorted any more. */
function fileOf(
  file: BackupHead['files'][number],
  studentOf: (id: string) => string,
  hasSound: boolean,
): GivenFile {
  const isLost = file.state === 'waiting' && !hasSound;
  return {
    ...file,
    studentId: studentOf(file.studentId),
    ...(isLost && { state: 'refused' as const, reason: { trouble: 'file-gone' as const } }),
    ...(file.state === 'sorted' && { whole: hasSound }),
    deletedMs: null,
  };
}

function saidOf({ attempt, example, voices }: Open): Said {
  const remarks = attempt.remarks.map((one, nth): Remark => ({ ...one, voice: voices.get(nth) ?? null }));
  const played = attempt.example;
  return {
    remarks,
    corrections: attempt.corrections,
    ...(played !== undefined && example !== null && { example: { ...played, sound: example } }),
  };
}

/** What was said here, with what was said there and is not here. */
function withMissing(here: Said, there: Said): Said {
  const isNew = ({ id }: Remark): boolean => here.remarks.every((one) => one.id !== id);
  const example = here.example ?? there.example;
  const places = here.corrections.map(({ place }) => JSON.stringify(place));
  return {
    remarks: [...here.remarks, ...there.remarks.filter(isNew)],
    corrections: [
      ...here.corrections,
      ...there.corrections.filter(({ place }) => !places.includes(JSON.stringify(place))),
    ],
    ...(example !== undefined && { example }),
  };
}
