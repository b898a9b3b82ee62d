import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { resolve } from 'node:path';
import type { AudioInput } from '../../src/engine/index.ts';
import { encodeWav } from '../../src/io/exchange/index.ts';

/** What messengers do to a recording: ffmpeg's encoder arguments and the file's ending. */
export const CODECS: Readonly<
  Record<string, { readonly encoder: readonly string[]; readonly ending: string }>
> = {
  'Opus 16 kbit/s': { encoder: ['-c:a', 'libopus', '-b:a', '16k', '-application', 'voip'], ending: 'ogg' },
  'Opus 24 kbit/s': { encoder: ['-c:a', 'libopus', '-b:a', '24k'], ending: 'ogg' },
  'AAC 64 kbit/s': { encoder: ['-c:a', 'aac', '-b:a', '64k'], ending: 'm4a' },
  'MP3 64 kbit/s': { encoder: ['-c:a', 'libmp3lame', '-b:a', '64k'], ending: 'mp3' },
};

/** Sound → the same encoded and decoded again. Needs ffmpeg, which the bench therefore uses only when asked to. */
export function throughCodec(audio: AudioInput, codec: string): AudioInput {
  const { encoder, ending } = CODECS[codec]!;
  const folder = mkdtempSync(resolve(tmpdir(), 'evenfall-codec-'));
  const sent = resolve(folder, `sent.${ending}`);
  const wav = resolve(folder, 'played.wav');
  writeFileSync(wav, new Uint8Array(encodeWav(audio)));
  const ffmpeg = (args: readonly string[]): Buffer => {
    const { status, stdout, stderr, error } = spawnSync('ffmpeg', ['-v', 'error', '-y', ...args], {
      maxBuffer: 2 ** 30,
    });
    if (status !== 0) throw new Error(`ffmpeg failed: ${error?.message ?? stderr.toString()}`);
    return stdout;
  };
  ffmpeg(['-i', wav, ...encoder, sent]);
  const raw = ffmpeg(['-i', sent, '-f', 'f32le', '-ac', '1', '-ar', String(audio.sampleRateHz), '-']);
  rmSync(folder, { recursive: true });
  const samples = new Float32Array(raw.length / 4);
  for (let index = 0; index < samples.length; index++) samples[index] = raw.readFloatLE(4 * index);
  return { channels: [samples], sampleRateHz: audio.sampleRateHz };
}
