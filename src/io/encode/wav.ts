/** 'int16': small, for sending; 'float32': exactly the samples that were measured. */
export type WavSamples = 'int16' | 'float32';

/** wFormatTag and the length of a header up to the samples (Multimedia Programming Interface 1991; "fact" for float). */
const FORMATS = {
  int16: { tag: 1, bytes: 2, headerBytes: 44 },
  float32: { tag: 3, bytes: 4, headerBytes: 58 },
} as const;

export interface WavOptions {
  readonly samples: WavSamples;
}
const WAV_DEFAULTS: WavOptions = { samples: 'int16' };

/** Channels of one length → a WAV file. In int16, what lies beyond full scale is held at full scale. */
export function encodeWav(
  audio: { readonly channels: readonly Float32Array[]; readonly sampleRateHz: number },
  options: Partial<WavOptions> = {},
): ArrayBuffer {
  const { channels, sampleRateHz } = audio;
  const { samples } = { ...WAV_DEFAULTS, ...options };
  const { bytes, headerBytes } = FORMATS[samples];
  const frames = channels[0]?.length ?? 0;
  const frameBytes = channels.length * bytes;
  const file = withHeader(samples, channels.length, sampleRateHz, frames);
  const view = new DataView(file);
  const write =
    samples === 'float32'
      ? (to: number, value: number) => view.setFloat32(to, value, true)
      : (to: number, value: number) =>
          view.setInt16(to, Math.max(-32_768, Math.min(32_767, Math.round(value * 32_768))), true);
  channels.forEach((channel, c) => {
    for (let i = 0; i < frames; i++) write(headerBytes + i * frameBytes + c * bytes, channel[i]!);
  });
  return file;
}

/** One channel in 16 bits, in parts that follow each other → a WAV file, as `encodeWav` writes it of the same sound. */
export function encodePcm(parts: readonly Int16Array[], sampleRateHz: number): ArrayBuffer {
  const frames = parts.reduce((sum, { length }) => sum + length, 0);
  const file = withHeader('int16', 1, sampleRateHz, frames);
  // WAV is little-endian, and so is every machine that runs this.
  const samples = new Int16Array(file, FORMATS.int16.headerBytes);
  let at = 0;
  for (const part of parts) {
    samples.set(part, at);
    at += part.length;
  }
  return file;
}

/** A file of silence: its header and room for so many frames. */
function withHeader(
  samples: WavSamples,
  channels: number,
  sampleRateHz: number,
  frames: number,
): ArrayBuffer {
  const { tag, bytes, headerBytes } = FORMATS[samples];
  const frameBytes = channels * bytes;
  const dataBytes = frames * frameBytes;
  const file = new ArrayBuffer(headerBytes + dataBytes);
  const view = new DataView(file);
  let at = 0;
  const text = (name: string): void => {
    for (const letter of name) view.setUint8(at++, letter.charCodeAt(0));
  };
  const u16 = (value: number): void => {
    view.setUint16(at, value, true);
    at += 2;
  };
  const u32 = (value: number): void => {
    view.setUint32(at, value, true);
    at += 4;
  };
  text('RIFF');
  u32(file.byteLength - 8);
  text('WAVEfmt ');
  u32(samples === 'float32' ? 18 : 16);
  u16(tag);
  u16(channels);
  u32(sampleRateHz);
  u32(sampleRateHz * frameBytes);
  u16(frameBytes);
  u16(bytes * 8);
  if (samples === 'float32') {
    // All formats but PCM carry the size of an extension (none) and a "fact" chunk with the length in samples.
    u16(0);
    text('fact');
    u32(4);
    u32(frames);
  }
  text('data');
  u32(dataBytes);
  return file;
}
