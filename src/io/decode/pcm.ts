import { A_LAW, MU_LAW } from './g711.ts';

/** How plain samples are laid out. */
export interface PcmLayout {
  readonly encoding: 'unsigned' | 'signed' | 'float' | 'mu-law' | 'a-law';
  readonly bytesPerSample: number;
  readonly littleEndian: boolean;
  readonly channels: number;
}

/** Reads one sample at a byte offset, scaled to −1..1. */
type SampleReader = (view: DataView, at: number) => number;

/** Interleaved samples → one array a channel; a last frame that is not whole is dropped. */
export function readPcm(bytes: Uint8Array, layout: PcmLayout): Float32Array[] {
  const read = sampleReader(layout);
  if (read === null) return [];
  const { channels, bytesPerSample } = layout;
  const frameBytes = channels * bytesPerSample;
  const frames = Math.floor(bytes.length / frameBytes);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return Array.from({ length: channels }, (_, channel) => {
    const out = new Float32Array(frames);
    for (let i = 0, at = channel * bytesPerSample; i < frames; i++, at += frameBytes) out[i] = read(view, at);
    return out;
  });
}

/** Whether samples of this layout can be read. */
export function isReadable(layout: PcmLayout): boolean {
  return sampleReader(layout) !== null;
}

/**
 * Full scale of b bits is 2^(b−1) (Multimedia Programming Interface and Data Specifications 1.0, 1991, "PCM format":
 * 1 to 8 bits unsigned about 128, more bits signed). Fewer valid bits are left-justified in their container
 * (WAVEFORMATEXTENSIBLE), so the container's scale serves them too.
 */
function sampleReader({ encoding, bytesPerSample, littleEndian: le }: PcmLayout): SampleReader | null {
  switch (`${encoding} ${bytesPerSample}`) {
    case 'unsigned 1':
      return (view, at) => (view.getUint8(at) - 128) / 128;
    case 'signed 1':
      return (view, at) => view.getInt8(at) / 128;
    case 'signed 2':
      return (view, at) => view.getInt16(at, le) / 32_768;
    case 'signed 3':
      return le
        ? (view, at) => ((view.getInt8(at + 2) << 16) | view.getUint16(at, true)) / 8_388_608
        : (view, at) => ((view.getInt16(at) << 8) | view.getUint8(at + 2)) / 8_388_608;
    case 'signed 4':
      return (view, at) => view.getInt32(at, le) / 2_147_483_648;
    case 'mu-law 1':
      return (view, at) => MU_LAW[view.getUint8(at)]!;
    case 'a-law 1':
      return (view, at) => A_LAW[view.getUint8(at)]!;
    case 'float 4':
      return (view, at) => view.getFloat32(at, le);
    case 'float 8':
      return (view, at) => view.getFloat64(at, le);
    default:
      return null;
  }
}
