import type { AudioInput } from '../engine/index.ts';
import { DecodeError } from '../io/decode/errors.ts';
import { inMemory } from '../io/decode/file-bytes.ts';
import { sniff } from '../io/decode/sniff.ts';
import { decode } from '../io/decode/wav.ts';

/** Further channels carry a film's surround, never the piano alone. */
const MOST_CHANNELS = 2;

/**
 * The bytes of a WAV file → its sound: 8 to 32 bits or floating point, any rate, the first two channels, −1..1 (floating
 * point may reach beyond). A file that was cut short gives what is there.
 *
 * @throws DecodeError on what is no WAV file, on one without sound, of packed sound, or with a damaged header.
 * @example
 * const sound = await readWav(new Uint8Array(await (await fetch('attempt.wav')).arrayBuffer()));
 * console.log(sound.sampleRateHz, sound.channels[0]!.length);
 */
export async function readWav(bytes: Uint8Array): Promise<AudioInput> {
  const found = sniff(bytes);
  if (found.format !== 'wav') throw new DecodeError('not-sound', { trouble: 'no-wav' });
  const { channels, sampleRateHz } = await decode(inMemory(bytes.subarray(found.startByte)), {
    maxFrames: Infinity,
    maxChannels: MOST_CHANNELS,
  });
  return { channels, sampleRateHz };
}
