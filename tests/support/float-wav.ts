/**
 * Channels of one length → a WAV file with exactly these samples: 32-bit floating point, whose format has the size of an extension (none)
 * and a "fact" chunk behind it (Multimedia Programming Interface 1991).
 */
export function encodeFloatWav({
  channels,
  sampleRateHz,
}: {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
}): ArrayBuffer {
  const frames = channels[0]?.length ?? 0;
  const frameBytes = 4 * channels.length;
  const file = new ArrayBuffer(HEADER_BYTES + frames * frameBytes);
  const view = new DataView(file);
  const text = (at: number, letters: string): void =>
    [...letters].forEach((letter, i) => view.setUint8(at + i, letter.charCodeAt(0)));
  text(0, 'RIFF');
  view.setUint32(4, file.byteLength - 8, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 18, true);
  view.setUint16(20, 3, true);
  view.setUint16(22, channels.length, true);
  view.setUint32(24, sampleRateHz, true);
  view.setUint32(28, sampleRateHz * frameBytes, true);
  view.setUint16(32, frameBytes, true);
  view.setUint16(34, 32, true);
  text(38, 'fact');
  view.setUint32(42, 4, true);
  view.setUint32(46, frames, true);
  text(50, 'data');
  view.setUint32(54, frames * frameBytes, true);
  channels.forEach((channel, c) =>
    channel.forEach((value, i) => view.setFloat32(HEADER_BYTES + i * frameBytes + 4 * c, value, true)),
  );
  return file;
}

const HEADER_BYTES = 58;
