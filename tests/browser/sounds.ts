import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { decodeFile } from '../../src/io/decode/index.ts';
import { encodeWav } from '../../src/io/exchange/index.ts';

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
  return Buffer.from(encodeWav({ channels: [padded], sampleRateHz }, { samples: 'float32' }));
}
