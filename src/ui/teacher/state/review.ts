import type { Review, SentAttempt, SoundFile } from '../../../io/review/index.ts';
import type { Example, Playing, Student } from '../../../io/teaching/index.ts';
import type { TeachingDevices } from './devices.ts';

/** What an example is called in the file; each page says it in its own language. */
const EXAMPLE = 'example attempt';

/** What a review is made of besides what is stored. */
export interface ReviewOptions {
  readonly teacher: string;
  /** the sound of the attempts goes along; spoken remarks always do */
  readonly withSound: boolean;
  /** its name, as `roundOf` tells; null: a new one */
  readonly round: string | null;
}

/**
 * The name of the review that a student would get now: that of the last one, so that it takes its place on her side, where nothing
 * new has come in from her since and all that was in it is in it again; null: a new one. `attempts`: all of hers.
 */
export function roundOf(
  { sent }: Student,
  attempts: readonly Playing[],
  chosen: readonly Playing[],
): string | null {
  const last = sent.at(-1);
  if (last === undefined || attempts.some(({ addedMs }) => addedMs > last.madeMs)) return null;
  return last.attempts.every((one) => chosen.some(({ id }) => id === one)) ? last.id : null;
}

type Used = Pick<TeachingDevices, 'store' | 'decode' | 'encode' | 'now'>;

/** What is stored of a student's attempts → one review. Attempts without a report are left out. Rejects where one cannot be read. */
export async function reviewOf(
  devices: Used,
  student: Student,
  playings: readonly Playing[],
  { teacher, withSound, round }: ReviewOptions,
  onProgress: (share: number) => void = () => undefined,
): Promise<Review> {
  const attempts: SentAttempt[] = [];
  for (const [index, playing] of playings.entries()) {
    const { own, chosen } = await devices.store.reports(playing.id);
    const report = chosen ?? own;
    const { remarks, corrections, example } = await devices.store.said(playing.id);
    const sound = withSound ? await travelling(devices, playing) : null;
    onProgress((index + 1) / playings.length);
    if (report === null) continue;
    const { id, whenMs, name, recognition } = playing;
    const recognisedAs = chosen === null ? null : recognition.choice;
    attempts.push({ id, whenMs, name, report, recognisedAs, sound, remarks, corrections });
    if (example) attempts.push(exampleOf(id, example));
  }
  return {
    kind: 'review',
    id: round ?? devices.store.newId(),
    madeMs: devices.now(),
    student: student.name,
    teacher,
    words: student.words,
    attempts,
    assignment: student.assignment,
  };
}

/** What the teacher played travels as an attempt, which a page that knows no examples shows as one; its sound always goes along. */
function exampleOf(id: string, { report, sound, madeMs }: Example): SentAttempt {
  return {
    id: `${id}-example`,
    whenMs: madeMs,
    name: EXAMPLE,
    report,
    recognisedAs: null,
    exampleFor: id,
    sound,
    remarks: [],
    corrections: [],
  };
}

/** The sound of an attempt as it travels: small; what came small stays as it is. */
async function travelling({ store, decode, encode }: Used, { id, name }: Playing): Promise<SoundFile | null> {
  const kept = await store.sound(id);
  if (kept === null || kept.mime !== 'audio/wav') return kept;
  return encode(await decode(kept.bytes.slice().buffer, name));
}
