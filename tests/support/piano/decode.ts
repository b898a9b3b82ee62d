import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis';
import { MPEGDecoder } from 'mpg123-decoder';
import { inMemory } from '../../../src/io/decode/file-bytes.ts';
import { decode as decodeWav } from '../../../src/io/decode/wav.ts';

/** One channel of a decoded file. */
export interface Decoded {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
}

const ROOT = resolve(import.meta.dirname, '../../../node_modules');
const CACHE = resolve(ROOT, '.cache/evenfall-pianos');
/** Exercises hold no key for longer. */
const KEPT_SEC = 8;

/**
 * File under node_modules → its left channel (left plus right of a wide pair cancels by up to 10 dB), at most 8 s. What
 * was decoded once is kept as raw float32 under node_modules/.cache, the sample rate in the name.
 */
export async function decodeSample(path: string): Promise<Decoded> {
  if (path.endsWith('.wav')) return decodePlain(path);
  const cached = resolve(CACHE, `${path.replaceAll('/', '_')}`);
  for (const sampleRateHz of [44100, 48000]) {
    const bytes = readIfThere(`${cached}.${sampleRateHz}.f32`);
    if (bytes !== null) return { samples: new Float32Array(bytes), sampleRateHz };
  }
  const file = readFileSync(resolve(ROOT, path));
  const decoded = path.endsWith('.ogg') ? await decodeOgg(file) : await decodeMp3(file);
  mkdirSync(CACHE, { recursive: true });
  // Written aside and moved, since several workers may decode the same file at once.
  const aside = `${cached}.${process.pid}.${Math.round(performance.now() * 1e6)}`;
  writeFileSync(aside, decoded.samples);
  renameSync(aside, `${cached}.${decoded.sampleRateHz}.f32`);
  return decoded;
}

function readIfThere(path: string): ArrayBuffer | null {
  try {
    const bytes = readFileSync(path);
    return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
  } catch {
    return null;
  }
}

/** A WAV is as quick to read as what is kept. */
async function decodePlain(path: string): Promise<Decoded> {
  const { channels, sampleRateHz } = await decodeWav(inMemory(readFileSync(path)), {
    maxFrames: Infinity,
    maxChannels: 1,
  });
  return { samples: channels[0]!.slice(0, KEPT_SEC * sampleRateHz), sampleRateHz };
}

async function decodeOgg(file: Uint8Array): Promise<Decoded> {
  const decoder = new OggVorbisDecoder();
  await decoder.ready;
  const { channelData, sampleRate } = await decoder.decodeFile(file);
  decoder.free();
  return { samples: channelData[0]!.slice(0, KEPT_SEC * sampleRate), sampleRateHz: sampleRate };
}

async function decodeMp3(file: Uint8Array): Promise<Decoded> {
  const decoder = new MPEGDecoder();
  await decoder.ready;
  const { channelData, sampleRate } = decoder.decode(file);
  const samples = channelData[0]!.slice(0, KEPT_SEC * sampleRate);
  decoder.free();
  return { samples, sampleRateHz: sampleRate };
}
