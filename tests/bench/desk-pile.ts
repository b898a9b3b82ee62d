import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { ExerciseChoice } from '../../src/engine/index.ts';
import { encodeWav } from '../../src/io/encode/index.ts';
import { pinkNoise } from '../support/home/noise.ts';
import { createRandom } from '../support/random.ts';
import { render, SAMPLE_RATE_HZ } from '../support/render.ts';

/** A pile as a teacher gets it: thirty recordings of a minute, from telephones and messengers. */
export const RECORDINGS = 30;
export const SECONDS = 60;
/** To be renamed when what is below makes another pile. */
const PILE = resolve(import.meta.dirname, '../../node_modules/.cache/evenfall-desk-pile-1');

/** A third single notes, a third chords of one hand, a third both hands. */
const EXERCISES: readonly ExerciseChoice[] = [
  { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 },
  { key: 'G minor', form: 'triads', hands: 'left', octaves: 1 },
  { key: 'E major', form: 'scale', hands: 'together', octaves: 2 },
  { key: 'Bb major', form: 'scale', hands: 'left', octaves: 2 },
  { key: 'A major', form: 'progression', hands: 'right', octaves: 1 },
  { key: 'F major', form: 'progression', hands: 'together', octaves: 1 },
  { key: 'C minor', form: 'broken-triads', hands: 'right', octaves: 1 },
  { key: 'Eb major', form: 'triads', hands: 'right', octaves: 1 },
  { key: 'B minor', form: 'arpeggio', hands: 'together', octaves: 2 },
];

/** What telephones and messengers send; without ffmpeg all are WAV. */
const FORMATS: readonly { readonly ending: string; readonly encoder: readonly string[] }[] = [
  { ending: 'wav', encoder: [] },
  { ending: 'm4a', encoder: ['-c:a', 'aac', '-b:a', '64k'] },
  { ending: 'ogg', encoder: ['-c:a', 'libopus', '-b:a', '24k'] },
  { ending: 'mp3', encoder: ['-c:a', 'libmp3lame', '-b:a', '96k', '-ac', '2'] },
];

/** The pile's files; made once, which takes minutes. */
export async function pile(): Promise<{ readonly folder: string; readonly files: readonly string[] }> {
  mkdirSync(PILE, { recursive: true });
  const files: string[] = [];
  for (let index = 0; index < RECORDINGS; index++) files.push(await recording(index));
  return { folder: PILE, files };
}

async function recording(index: number): Promise<string> {
  const { ending, encoder } = FORMATS[index % FORMATS.length]!;
  const stem = join(PILE, `Student ${(index % 6) + 1} - ${index}`);
  const [wav, sent] = [`${stem}.wav`, `${stem}.${ending}`];
  if (existsSync(sent)) return sent;
  if (existsSync(wav)) return wav;
  const made = `${stem}.making.wav`;
  writeFileSync(
    made,
    new Uint8Array(encodeWav({ channels: [await minute(index)], sampleRateHz: SAMPLE_RATE_HZ })),
  );
  const encoded = `${stem}.making.${ending}`;
  const { status } =
    encoder.length === 0
      ? { status: 0 }
      : spawnSync('ffmpeg', ['-v', 'error', '-y', '-i', made, ...encoder, encoded]);
  const done = status === 0 ? [encoder.length === 0 ? made : encoded, sent] : [made, wav];
  renameSync(done[0]!, done[1]!);
  return done[1]!;
}

/** Attempts at one exercise after another, two to four seconds between them, in a quiet room. */
async function minute(index: number): Promise<Float32Array> {
  const random = createRandom(5100 + index);
  const noise = pinkNoise(SECONDS * SAMPLE_RATE_HZ, random.fork('bed'));
  const sound = Float32Array.from(noise, (value) => 10 ** (-58 / 20) * value);
  const exercise = EXERCISES[index % EXERCISES.length]!;
  let at = Math.round(random.uniform(1, 2) * SAMPLE_RATE_HZ);
  for (let take = 0; take < 12; take++) {
    const { channels } = await render({
      seed: 100 * index + take,
      piano: 'dev',
      exercise,
      student: { bpm: random.uniform(60, 90), jitterMs: 15, leadInSec: 0.5, leadOutSec: 1.5 },
    });
    const attempt = channels[0]!;
    if (at + attempt.length > sound.length) break;
    for (let i = 0; i < attempt.length; i++) sound[at + i]! += attempt[i]!;
    at += attempt.length + Math.round(random.uniform(0.5, 2.5) * SAMPLE_RATE_HZ);
  }
  return sound;
}
