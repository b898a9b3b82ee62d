import type { SoundFile } from '../encode/index.ts';

/** Names of the files in a review. Numbers count from 1, attempts and spoken remarks each for themselves. */
export const MANIFEST = 'manifest.json';

export const reportName = (number: number): string => `reports/${number}.json`;
export const soundName = (number: number, { mime }: SoundFile): string => `sound/${number}.${ENDING[mime]}`;
export const voiceName = (number: number, { mime }: SoundFile): string => `voice/${number}.${ENDING[mime]}`;

const ENDING = { 'audio/webm': 'webm', 'audio/wav': 'wav' } as const;

/** The only names that are read; all else in a review is refused. */
export const REPORT_NAME = /^reports\/[1-9]\d{0,2}\.json$/;
export const SOUND_NAME = /^sound\/[1-9]\d{0,2}\.(webm|wav)$/;
export const VOICE_NAME = /^voice\/[1-9]\d{0,3}\.(webm|wav)$/;

/** What a file with sound is, by its name; whether it is, its bytes say (sounds.ts). */
export function mimeOf(name: string): SoundFile['mime'] {
  return name.endsWith('.wav') ? 'audio/wav' : 'audio/webm';
}
