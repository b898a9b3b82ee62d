import { isArchive } from '../archive/index.ts';
import { endingOf } from '../encode/index.ts';
import type { SoundFile } from '../encode/index.ts';

/** Names of the files in a review. Numbers count from 1, attempts and spoken remarks each for themselves. */
export const MANIFEST = 'manifest.json';

export const reportName = (number: number): string => `reports/${number}.json`;
export const soundName = (number: number, sound: SoundFile): string => `sound/${number}.${endingOf(sound)}`;
export const voiceName = (number: number, voice: SoundFile): string => `voice/${number}.${endingOf(voice)}`;

/** The only names that are read; all else in a review is refused. */
export const REPORT_NAME = /^reports\/[1-9]\d{0,2}\.json$/;
export const SOUND_NAME = /^sound\/[1-9]\d{0,2}\.(webm|wav)$/;
export const VOICE_NAME = /^voice\/[1-9]\d{0,3}\.(webm|wav)$/;

/** A local header, then the name (APPNOTE.TXT 6.3.10, 4.3.7). */
const NAME_AT = 30;
/** The last records of a zip, in which the directory lies as a rule. */
const TAIL_BYTES = 262_144;

/**
 * Whether a file means to be a review, so that a broken one is told as a review and not as an archive of recordings: a zip
 * in which a file is called manifest.json, at its beginning or in its directory. `readReview` says whether it is one.
 */
export async function isReview(file: Blob): Promise<boolean> {
  if (!(await isArchive(file))) return false;
  const first = await lettersOf(file, NAME_AT, NAME_AT + MANIFEST.length);
  return first === MANIFEST || (await lettersOf(file, file.size - TAIL_BYTES, file.size)).includes(MANIFEST);
}

async function lettersOf(file: Blob, from: number, to: number): Promise<string> {
  return new TextDecoder('latin1').decode(await file.slice(Math.max(0, from), to).arrayBuffer());
}
