import { fieldsOf } from '../../engine/index.ts';
import type { ExerciseChoice } from '../../engine/index.ts';
import { ATTEMPT, FORMAT, FORMAT_VERSION } from './check-file.ts';
import type { FiledAttempt } from './check-file.ts';
import type { OpenJournal } from './database.ts';
import { readEntries, readRemembered } from './drawers.ts';
import { packed } from './packed.ts';
import { jsonParts, tarEnd, tarParts } from './tar.ts';
import type { Entry } from './types.ts';

/** Attempts whose sound is held in memory at a time would be all of them; so it goes out one by one, through the browser's gzip. */
export async function exportJournal(
  database: OpenJournal,
  nowMs: number,
  passages: readonly ExerciseChoice[],
  onProgress: (share: number) => void,
): Promise<Blob> {
  return packed(parts(database, nowMs, passages, onProgress));
}

async function* parts(
  database: OpenJournal,
  nowMs: number,
  passages: readonly ExerciseChoice[],
  onProgress: (share: number) => void,
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const entries = (await readEntries(database)).filter((entry) => entry.deletedMs === null);
  const remembered = await readRemembered(database);
  const head = { format: FORMAT, version: FORMAT_VERSION, remembered };
  yield* jsonParts('evenfall-journal.json', { ...head, ...(passages.length > 0 && { passages }) }, nowMs);
  for (const [index, entry] of entries.entries()) {
    const { attempt, sound } = await filedAttempt(database, entry);
    yield* jsonParts(`attempts/${entry.id}/attempt.json`, attempt, entry.whenMs);
    if (sound !== undefined) {
      const bytes = new Uint8Array(sound);
      yield* tarParts({ name: `attempts/${entry.id}/sound.wav`, bytes }, entry.whenMs);
    }
    onProgress((index + 1) / entries.length);
  }
  yield tarEnd();
}

/** An entry → all that is stored of its attempt, as it goes into a file. */
export async function filedAttempt(
  database: OpenJournal,
  entry: Entry,
): Promise<{ readonly attempt: FiledAttempt; readonly sound: ArrayBuffer | undefined }> {
  const { id } = entry;
  const [report, sound] = await Promise.all([database.get('reports', id), database.get('sounds', id)]);
  return { attempt: { ...fieldsOf(ATTEMPT, entry), report: report ?? null }, sound };
}
