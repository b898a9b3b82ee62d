import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { decodeFile } from '../../src/io/decode/index.ts';
import { encodeFloatWav } from '../support/float-wav.ts';

const FIXTURES = resolve(import.meta.dirname, '../../audio-fixtures');

export const fixturePath = (name: string): string => resolve(FIXTURES, name, 'attempt.wav');

export async function fixtureSound(name: string) {
  const bytes = readFileSync(fixturePath(name));
  return decodeFile(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength), `${name}.wav`);
}

/** One sound after another with silence between, `seconds` long in all. */
export function lengthened(channel: Float32Array, sampleRateHz: number, seconds: number): Float32Array {
  const whole = new Float32Array(Math.round(seconds * sampleRateHz));
  whole.set(channel.subarray(0, whole.length), 0);
  return whole;
}

/**
 * A fixture as Chromium's fake microphone takes it bit by bit: 44.1 kHz float mono, a second of silence at either end
 * (up to 80 ms are lost at the start; %noloop repeats the last 10 ms for ever).
 */
export async function microphoneWav(name: string): Promise<Buffer> {
  const { channels, sampleRateHz } = await fixtureSound(name);
  if (sampleRateHz !== 44_100) throw new Error(`${name}: sampleRateHz=${sampleRateHz}, must be 44100`);
  const sound = channels[0]!;
  const padded = new Float32Array(sound.length + 2 * sampleRateHz);
  padded.set(sound, sampleRateHz);
  return Buffer.from(encodeFloatWav({ channels: [padded], sampleRateHz }));
}

/** Fixtures one after the other, each begun at its second and cut where the whole ends, as a WAV that Chromium takes as its microphone → its path. */
export async function microphoneOf(
  attempts: readonly { readonly name: string; readonly atSec: number }[],
  lengthSec: number,
): Promise<string> {
  const rateHz = 44_100;
  const whole = new Float32Array(lengthSec * rateHz);
  for (const { name, atSec } of attempts) {
    const { channels, sampleRateHz } = await fixtureSound(name);
    if (sampleRateHz !== rateHz) throw new Error(`${name}: sampleRateHz=${sampleRateHz}, must be ${rateHz}`);
    const from = Math.round(atSec * rateHz);
    whole.set(channels[0]!.subarray(0, whole.length - from), from);
  }
  const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'microphone.wav');
  const wav = encodeFloatWav({ channels: [whole], sampleRateHz: rateHz });
  writeFileSync(path, new Uint8Array(wav));
  return path;
}
