import type { AudioInput } from '../../engine/index.ts';
import { decodeFile } from '../decode/index.ts';
import { encodeWav } from '../exchange/index.ts';

/** Sound → how it is stored: a WAV of 16 bits, which any program opens; its rounding lies 98 dB under full scale. */
export function packSound(sound: AudioInput): ArrayBuffer {
  return encodeWav(sound);
}

/** Stored sound → sound; rejects with DecodeError where it is no sound. */
export async function unpackSound(bytes: ArrayBuffer): Promise<AudioInput> {
  const { channels, sampleRateHz } = await decodeFile(bytes, 'attempt.wav');
  return { channels, sampleRateHz };
}
