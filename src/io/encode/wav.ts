/** A header up to the samples (Multimedia Programming Interface 1991). */
const HEADER_BYTES = 44;
const SAMPLE_BYTES = 2;

/** Channels of one length → a WAV file of 16 bits; what lies beyond full scale is held at full scale. */
export function encodeWav({
  channels,
  sampleRateHz,
}: {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
}): ArrayBuffer {
  const frames = channels[0]?.length ?? 0;
  const file = withHeader(channels.length, sampleRateHz, frames);
  const view = new DataView(file);
  channels.forEach((channel, c) => {
    for (let i = 0; i < frames; i++) {
      const value = Math.max(-32_768, Math.min(32_767, Math.round(channel[i]! * 32_768)));
      view.setInt16(HEADER_BYTES + SAMPLE_BYTES * (i * channels.length + c), value, true);
    }
  });
  return file;
}

/** One channel in 16 bits, in parts that follow each other → a WAV file, as `encodeWav` writes it of the same sound. */
export function encodePcm(parts: readonly Int16Array[], sampleRateHz: number): ArrayBuffer {
  const frames = parts.reduce((sum, { length }) => sum + length, 0);
  const file = withHeader(1, sampleRateHz, frames);
  // WAV is little-endian, and so is every machine that runs this.
  const samples = new Int16Array(file, HEADER_BYTES);
  let at = 0;
  for (const part of parts) {
    samples.set(part, at);
    at += part.length;
  }
  return file;
}

/** A file of silence: its header and room for so many frames. */
function withHeader(channels: number, sampleRateHz: number, frames: number): ArrayBuffer {
  const frameBytes = SAMPLE_BYTES * channels;
  const dataBytes = frames * frameBytes;
  const file = new ArrayBuffer(HEADER_BYTES + dataBytes);
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
  u32(16);
  // Plain samples.
  u16(1);
  u16(channels);
  u32(sampleRateHz);
  u32(sampleRateHz * frameBytes);
  u16(frameBytes);
  u16(8 * SAMPLE_BYTES);
  text('data');
  u32(dataBytes);
  return file;
}
