import { mergeHands, type HandsAlone } from '../../../engine/index.ts';
import { toldBy, type GivenFile, type Playing } from '../../../io/teaching/index.ts';
import type { TeachingDevices } from './devices.ts';
import type { TeachingLists } from './lists.svelte.ts';

type Used = Pick<TeachingDevices, 'store' | 'decode' | 'analyst' | 'locale' | 'criteria'>;

/**
 * To be called for each file that was sorted. After the last one of its student and day, attempts of both hands are listened to again
 * beside hands alone out of other recordings of that day: of one piano, most likely, and let go of where it is not. What somebody
 * has opened, heard or remarked on stays as it is. `isOpen`: an attempt is, by its name.
 */
export async function compareHands(
  devices: Used,
  lists: TeachingLists,
  file: GivenFile,
  isOpen: (id: string) => boolean,
): Promise<void> {
  const { studentId, writtenMs } = file;
  const isOfDay = onDay(studentId, writtenMs);
  if (lists.files.some((one) => one.state === 'waiting' && isOfDay(one.studentId, one.writtenMs))) return;
  const both = lists.playings.filter(
    (one) => isOfDay(one.studentId, one.whenMs) && isBoth(one) && isUntouched(one),
  );
  if (both.length === 0) return;
  const taught = await taughtOn(devices, lists, studentId, writtenMs);
  for (const playing of both) {
    // Those of its own recording were compared with when it was sorted.
    if (taught.some(({ fileId }) => fileId !== playing.fileId))
      await lists.try(() => listenAgain(devices, lists, playing, together(taught), isOpen));
  }
}

/** What is known of hands alone from a student's recordings of the day of a playing; null: nothing. */
export async function handsOfDay(
  devices: Pick<Used, 'store'>,
  lists: TeachingLists,
  { studentId, whenMs }: Playing,
): Promise<HandsAlone | null> {
  return together(await taughtOn(devices, lists, studentId, whenMs));
}

interface Taught {
  readonly fileId: string;
  readonly alone: HandsAlone;
}

function together(taught: readonly Taught[]): HandsAlone | null {
  return taught.reduce<HandsAlone | null>((known, { alone }) => mergeHands(known, alone), null);
}

/** What a student's recordings of one day taught of hands alone, in order of time. */
async function taughtOn(
  { store }: Pick<Used, 'store'>,
  lists: TeachingLists,
  studentId: string,
  whenMs: number | null,
): Promise<readonly Taught[]> {
  const isOfDay = onDay(studentId, whenMs);
  const playings = lists.playings
    .filter((one) => isOfDay(one.studentId, one.whenMs))
    .toSorted((a, b) => (a.whenMs ?? 0) - (b.whenMs ?? 0));
  const taught = await Promise.all(
    playings.map(async ({ id, fileId }) => {
      const reports = await lists.try(() => store.reports(id));
      return reports?.alone === undefined ? [] : [{ fileId, alone: reports.alone }];
    }),
  );
  return taught.flat();
}

/** One student and day, in the calendar of this place; a time that is not known is of no day. */
function onDay(studentId: string, whenMs: number | null): (student: string, ms: number | null) => boolean {
  return (student, ms) => student === studentId && ms !== null && dayOf(ms) === dayOf(whenMs);
}

function dayOf(whenMs: number | null): number | null {
  return whenMs === null ? null : new Date(whenMs).setHours(0, 0, 0, 0);
}

/** What a student sent has a report that they know. */
function isBoth({ fileId, recognition }: Playing): boolean {
  return fileId !== '' && recognition.choice?.hands === 'together';
}

function isUntouched({ chosen, heardMs, remarks, answeredMs }: Playing): boolean {
  return chosen === null && heardMs === null && remarks === 0 && answeredMs === null;
}

async function listenAgain(
  { store, decode, analyst, locale, criteria }: Used,
  lists: TeachingLists,
  { id, name, recognition }: Playing,
  alone: HandsAlone | null,
  isOpen: (id: string) => boolean,
): Promise<void> {
  const file = await store.sound(id);
  if (file === null) return;
  const sound = await decode(file.bytes.slice().buffer, name);
  const options = { locale: locale(), criteria: criteria(), asChosen: true, alone };
  const told = await analyst.analyse(sound, recognition.choice, options);
  const now = lists.playings.find((one) => one.id === id);
  if (told.kind !== 'report' || now === undefined || !isUntouched(now) || isOpen(id)) return;
  await store.putReports(id, { ...(await store.reports(id)), own: told.report });
  await lists.changePlayings([id], (kept) => (isUntouched(kept) ? toldBy(told.report) : {}));
}
