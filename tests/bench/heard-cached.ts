import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { listen } from '../../src/engine/index.ts';
import type { AudioInput, Heard } from '../../src/engine/index.ts';

const HERE = import.meta.dirname;
const hash = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 20);
const sources = (folder: string): string =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .sort()
    .map((file) => readFileSync(resolve(folder, file), 'utf8'))
    .join('\n');

/** The sources of all that sounds and all that listens name the folder, so that changed ones never answer with old notes. */
const CACHE = resolve(
  HERE,
  '../../node_modules/.cache/evenfall-heard',
  hash(['../support', '../../src/engine/listen'].map((folder) => sources(resolve(HERE, folder))).join('\n')),
);

/** What was heard of a sound that is told by `spec`: from node_modules/.cache where it was listened to before. */
export async function heardCached(spec: unknown, sound: () => Promise<AudioInput>): Promise<Heard> {
  const path = resolve(CACHE, `${hash(JSON.stringify(spec))}.json`);
  if (existsSync(path)) return JSON.parse(readFileSync(path, 'utf8')) as Heard;
  const { notes, tuning, findings, passages, durationSec, sampleRateHz, onsetSdMs } = listen(await sound());
  const heard = { notes, tuning, findings, passages, durationSec, sampleRateHz, onsetSdMs };
  mkdirSync(CACHE, { recursive: true });
  writeFileSync(path, JSON.stringify(heard));
  return heard;
}
