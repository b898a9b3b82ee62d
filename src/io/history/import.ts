import { summarise } from '../../engine/index.ts';
import { checkAttempt, checkHead, timeNamed } from './check-file.ts';
import type { FiledAttempt } from './check-file.ts';
import { StorageError } from '../database/index.ts';
import { isSoundOfKind } from '../encode/index.ts';
import type { Trouble } from '../troubles/index.ts';
import type { JournalDatabase } from './database.ts';
import { drawerOf, putEntry, readDrawer } from './drawers.ts';
import { nameFor, timeIn } from './entry.ts';
import { filedAttempt } from './export.ts';
import { unpacked } from './packed.ts';
import { tarMembers, TarError } from './tar.ts';
import type { Entry, ImportOutcome, Remembered } from './types.ts';

/** Bounds of what is read of a file: the longest sound that the page reads (half an hour, two channels), and a century of playing. */
const MOST_SOUND_BYTES = 30 * 60 * 48_000 * 2 * 2 + 1024;
const MOST_REPORT_BYTES = 8 * 1024 * 1024;
const MOST_MEMBERS = 2_000_000;
/** More refusals than this are counted, not listed. */
const MOST_TOLD = 20;

/** What became of one attempt. */
type Fate = 'added' | 'same' | 'both';

/**
 * A file → its attempts in the journal. An attempt that is here already, the same, is passed over; one of the same name with
 * another content comes in beside it, under a name made of its content, so that importing twice adds it once.
 *
 * @throws StorageError where the file is no journal; attempts that cannot be read are told in the outcome.
 */
export async function importJournal(
  database: JournalDatabase,
  file: Blob,
  onProgress: (share: number) => void,
): Promise<ImportOutcome> {
  const counts = { added: 0, same: 0, both: 0 };
  const refused: Trouble[] = [];
  let untold = 0;
  const refuse = (why: Trouble): void => {
    if (refused.length < MOST_TOLD) refused.push(why);
    else untold += 1;
  };
  let begun = false;
  let passages: readonly unknown[] = [];
  try {
    const stream = await unpacked(file, onProgress);
    const onHead = async (head: ReturnType<typeof checkHead>): Promise<void> => {
      begun = true;
      passages = head.passages;
      await rememberWhatIsNew(database, head.remembered);
    };
    for await (const filed of filedIn(stream, refuse, onHead)) {
      counts[await merge(database, filed)] += 1;
    }
  } catch (error) {
    const damaged = error instanceof TarError || error instanceof TypeError;
    if (!damaged) throw error;
    if (!begun) throw new StorageError({ trouble: 'journal-damaged' });
    refuse({ trouble: 'journal-breaks-off' });
  }
  return {
    ...counts,
    ...(passages.length > 0 && { passages }),
    refused: untold === 0 ? refused : [...refused, { trouble: 'journal-and-more', more: untold }],
  };
}

interface Filed {
  readonly attempt: FiledAttempt;
  readonly sound: Uint8Array<ArrayBuffer> | null;
}

/** The attempts of an archive, each with the sound that follows it. */
async function* filedIn(
  stream: ReadableStream<Uint8Array>,
  refuse: (why: Trouble) => void,
  onHead: (head: ReturnType<typeof checkHead>) => Promise<void>,
): AsyncGenerator<Filed> {
  let waiting: FiledAttempt | null = null;
  let leftOut: string | null = null;
  let members = 0;
  let begun = false;
  for await (const { name, bytes } of tarMembers(stream, MOST_SOUND_BYTES)) {
    members += 1;
    if (members > MOST_MEMBERS) throw new StorageError({ trouble: 'journal-too-much' });
    if (!begun) {
      if (name !== 'evenfall-journal.json' || bytes === null)
        throw new StorageError({ trouble: 'no-journal' });
      begun = true;
      await onHead(checkHead(bytes));
      continue;
    }
    if (waiting !== null && name === `attempts/${waiting.id}/sound.wav`) {
      const isSound = bytes !== null && isSoundOfKind(bytes, 'audio/wav');
      if (!isSound) refuse({ trouble: 'journal-no-sound', whenMs: timeNamed(waiting.id) });
      yield { attempt: waiting, sound: isSound ? bytes : null };
      waiting = null;
      continue;
    }
    if (waiting !== null) yield { attempt: waiting, sound: null };
    waiting = null;
    const [, id, part]: readonly (string | undefined)[] =
      /^attempts\/([^/]+)\/(attempt\.json|sound\.wav)$/.exec(name) ?? [];
    if (id === undefined) refuse({ trouble: 'journal-other' });
    else if (part === 'sound.wav') {
      // What it belongs to was left out, and that is told.
      if (id !== leftOut) refuse({ trouble: 'journal-other' });
    } else {
      const attempt: FiledAttempt | Trouble =
        bytes === null || bytes.length > MOST_REPORT_BYTES
          ? { trouble: 'journal-too-large', whenMs: timeNamed(id) }
          : checkAttempt(bytes, id);
      if ('trouble' in attempt) {
        refuse(attempt);
        leftOut = id;
      } else waiting = attempt;
    }
  }
  if (waiting !== null) yield { attempt: waiting, sound: null };
}

/** What is remembered here stays as it is; the rest comes in. */
async function rememberWhatIsNew(database: JournalDatabase, remembered: Remembered): Promise<void> {
  await database.write(['remembered'], async (store) => {
    for (const [name, value] of Object.entries(remembered)) {
      const known = (await store('remembered').getKey(name)) !== undefined;
      if (!known) await store('remembered').put(JSON.stringify(value), name);
    }
  });
}

async function merge(database: JournalDatabase, filed: Filed): Promise<Fate> {
  const here = await entryOf(database, filed.attempt.id);
  if (here === undefined) return put(database, filed, 'added');
  if (await isSame(database, here, filed)) return complement(database, here, filed);
  const id = nameFor(timeIn(filed.attempt.id), (await fingerprint(filed)).slice(0, 16));
  const beside = await entryOf(database, id);
  if (beside !== undefined) return complement(database, beside, filed);
  return put(database, { ...filed, attempt: { ...filed.attempt, id } }, 'both');
}

async function entryOf(database: JournalDatabase, id: string): Promise<Entry | undefined> {
  const drawer = await database.use((open) => open.get('drawers', drawerOf(id)));
  return readDrawer(drawer).find((entry) => entry.id === id);
}

/** The same attempt; sound that only one of the two has makes no difference. */
async function isSame(database: JournalDatabase, here: Entry, filed: Filed): Promise<boolean> {
  const { attempt, sound } = await database.use((open) => filedAttempt(open, here));
  if (canonical(attempt) !== canonical(filed.attempt)) return false;
  if (sound === undefined || filed.sound === null) return true;
  const bytes = new Uint8Array(sound);
  return bytes.length === filed.sound.length && bytes.every((byte, at) => byte === filed.sound![at]);
}

/** An attempt that is here already: its sound if that is missing, and back if it was deleted. */
async function complement(database: JournalDatabase, here: Entry, { sound }: Filed): Promise<Fate> {
  const gainsSound = here.soundBytes === 0 && sound !== null;
  if (!gainsSound && here.deletedMs === null) return 'same';
  await database.write(['drawers', 'sounds'], async (store) => {
    if (gainsSound) await store('sounds').put(sound.buffer, here.id);
    const soundBytes = gainsSound ? sound.length : here.soundBytes;
    await putEntry(store('drawers'), { ...here, soundBytes, deletedMs: null });
  });
  return here.deletedMs === null ? 'same' : 'added';
}

async function put(database: JournalDatabase, { attempt, sound }: Filed, fate: Fate): Promise<Fate> {
  const { report, ...rest } = attempt;
  const told = report !== null;
  const entry: Entry = {
    ...rest,
    whenMs: timeIn(attempt.id),
    state: told ? 'told' : attempt.reason === '' ? 'unanalysed' : 'no-report',
    soundBytes: sound?.length ?? 0,
    summary: told ? summarise(report) : null,
    deletedMs: null,
  };
  await database.write(['drawers', 'reports', 'sounds'], async (store) => {
    await putEntry(store('drawers'), entry);
    if (told) await store('reports').put(report, entry.id);
    if (sound !== null) await store('sounds').put(sound.buffer, entry.id);
  });
  return fate;
}

/** Letters that stand for the content, whatever its name. */
async function fingerprint({ attempt, sound }: Filed): Promise<string> {
  const text = new TextEncoder().encode(canonical({ ...attempt, id: '' }));
  const bytes = new Uint8Array(text.length + (sound?.length ?? 0));
  bytes.set(text);
  if (sound !== null) bytes.set(sound, text.length);
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** JSON with its names in order, so that equal things are equal texts. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_name, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}
