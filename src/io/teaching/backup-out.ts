import { fieldsOf } from '../../engine/index.ts';
import type { ExerciseChoice } from '../../engine/index.ts';
import { packed } from '../history/packed.ts';
import { endingOf } from '../encode/index.ts';
import { jsonParts, tarEnd, tarParts } from '../history/tar.ts';
import { tellTrouble } from '../troubles/index.ts';
import {
  EXAMPLE,
  FILE,
  FORMAT,
  FORMAT_VERSION,
  PLAYING,
  STUDENT,
  TEMPLATE,
  WRITTEN_REMARK,
} from './backup-check.ts';
import type { BackupAttempt, BackupHead } from './backup-check.ts';
import type { Desktop, Reports, Said, TeachingStore, Template } from './types.ts';

/** What is read for a backup, one thing after the other: all sound at once would not fit into memory. */
interface Kept extends Pick<TeachingStore, 'templates' | 'reports' | 'said' | 'sound' | 'blob'> {
  readonly desktop: Desktop;
  readonly passages: readonly ExerciseChoice[];
}

/** A longer recording is left out as it came: it would have to be held whole; what was found in it goes along. */
const LARGEST_WHOLE_BYTES = 200_000_000;

/** All that a teacher has here → one file, a tar under the browser's gzip. */
export async function writeBackup(
  kept: Kept,
  nowMs: number,
  onProgress: (share: number) => void,
): Promise<Blob> {
  return packed(parts(kept, nowMs, onProgress));
}

async function* parts(
  { desktop, passages, templates, reports, said, sound, blob }: Kept,
  nowMs: number,
  onProgress: (share: number) => void,
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const put = (name: string, bytes: Uint8Array<ArrayBuffer>) => tarParts({ name, bytes }, nowMs);
  const json = (name: string, value: unknown) => jsonParts(name, value, nowMs);
  const { playings, files } = desktop;
  yield* json('evenfall-teaching.json', headOf(desktop, await templates(), passages));
  const count = playings.length + files.length;
  for (const [at, { id }] of playings.entries()) {
    const [told, words, heard] = await Promise.all([reports(id), said(id), sound(id)]);
    yield* json(`attempts/${at}/attempt.json`, attemptOf(id, told, words));
    if (words.example)
      yield* put(`attempts/${at}/example.${endingOf(words.example.sound)}`, words.example.sound.bytes);
    if (heard !== null) yield* put(`attempts/${at}/sound.${endingOf(heard)}`, heard.bytes);
    for (const [nth, { voice }] of words.remarks.entries())
      if (voice !== null) yield* put(`attempts/${at}/voice-${nth}.${endingOf(voice)}`, voice.bytes);
    onProgress((at + 1) / count);
  }
  for (const [at, { id, bytes }] of files.entries()) {
    const whole = bytes > LARGEST_WHOLE_BYTES ? null : await blob(id);
    if (whole !== null) yield* put(`recordings/${at}`, new Uint8Array(await whole.arrayBuffer()));
    onProgress((playings.length + at + 1) / count);
  }
  yield tarEnd();
}

function headOf(
  { students, files, playings }: Desktop,
  templates: readonly Template[],
  passages: readonly ExerciseChoice[],
): BackupHead {
  return {
    format: FORMAT,
    version: FORMAT_VERSION,
    students: students.map((one) => fieldsOf(STUDENT, one)),
    files: files.map((one) => ({
      ...fieldsOf(FILE, one),
      reason: typeof one.reason === 'string' ? one.reason : tellTrouble(one.reason, 'en'),
    })),
    playings: playings.map((one) => fieldsOf(PLAYING, one)),
    templates: templates.map((one) => fieldsOf(TEMPLATE, one)),
    ...(passages.length > 0 && { passages: [...passages] }),
  };
}

function attemptOf(
  id: string,
  { own, chosen, taught }: Reports,
  { remarks, corrections, example }: Said,
): BackupAttempt {
  return {
    id,
    own,
    chosen,
    remarks: remarks.map((one) => fieldsOf(WRITTEN_REMARK, one)),
    corrections,
    ...(taught !== undefined && { taught }),
    ...(example && { example: fieldsOf(EXAMPLE, example) }),
  };
}
