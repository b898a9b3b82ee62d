import type { OtherFile } from '../troubles/index.ts';
import { mpegFrameAt } from './mpeg-frames.ts';

/** What there is a decoder for. */
export type Decodable = 'wav' | 'aiff' | 'caf' | 'flac' | 'ogg' | 'matroska' | 'mp4' | 'mp3' | 'adts';

/** Formats told by their content. `other` names what it is instead. */
export type Sniffed =
  | { readonly format: Decodable; readonly startByte: number }
  | { readonly format: 'other'; readonly what: OtherFile; readonly isSound: boolean }
  | { readonly format: 'unknown' };

interface Signature {
  readonly at: number;
  readonly bytes: string;
}

/**
 * Signatures, each from its format's own specification: RIFF/WAVE (Multimedia Programming Interface 1991), RF64/BW64
 * (EBU Tech 3306, ITU-R BS.2088), AIFF (version 1.3, 1989), Core Audio (Apple's specification 1.0), FLAC (RFC 9639), Ogg (RFC 3533), EBML (RFC 8794), ISO base media (ISO/IEC 14496-12).
 */
const DECODABLE: readonly {
  readonly format: Exclude<Decodable, 'mp3' | 'adts'>;
  readonly signatures: readonly Signature[];
}[] = [
  { format: 'wav', signatures: [sign(0, 'RIFF'), sign(8, 'WAVE')] },
  { format: 'wav', signatures: [sign(0, 'RF64'), sign(8, 'WAVE')] },
  { format: 'wav', signatures: [sign(0, 'BW64'), sign(8, 'WAVE')] },
  { format: 'aiff', signatures: [sign(0, 'FORM'), sign(8, 'AIFF')] },
  { format: 'aiff', signatures: [sign(0, 'FORM'), sign(8, 'AIFC')] },
  { format: 'caf', signatures: [sign(0, 'caff')] },
  { format: 'flac', signatures: [sign(0, 'fLaC')] },
  { format: 'ogg', signatures: [sign(0, 'OggS')] },
  { format: 'matroska', signatures: [sign(0, '\x1a\x45\xdf\xa3')] },
  ...['ftyp', 'moov', 'mdat', 'wide', 'free', 'skip'].map((box) => ({
    format: 'mp4' as const,
    signatures: [sign(4, box)],
  })),
];

/** Things that people send by mistake, or sound that is rare; only for a clear message. */
const OTHERS: readonly {
  readonly what: OtherFile;
  readonly isSound: boolean;
  readonly signatures: readonly Signature[];
}[] = [
  {
    what: 'midi',
    isSound: false,
    signatures: [sign(0, 'RIFF'), sign(8, 'RMID')],
  },
  { what: 'midi', isSound: false, signatures: [sign(0, 'MThd')] },
  { what: 'pdf', isSound: false, signatures: [sign(0, '%PDF')] },
  { what: 'jpeg', isSound: false, signatures: [sign(0, '\xff\xd8\xff')] },
  { what: 'png', isSound: false, signatures: [sign(0, '\x89PNG')] },
  { what: 'zip', isSound: false, signatures: [sign(0, 'PK\x03\x04')] },
  { what: 'web-page', isSound: false, signatures: [sign(0, '<!')] },
  { what: 'web-page', isSound: false, signatures: [sign(0, '<html')] },
  { what: 'amr', isSound: true, signatures: [sign(0, '#!AMR')] },
  { what: 'windows-media', isSound: true, signatures: [sign(0, '\x30\x26\xb2\x75')] },
  { what: 'wavpack', isSound: true, signatures: [sign(0, 'wvpk')] },
  { what: 'avi', isSound: true, signatures: [sign(0, 'RIFF'), sign(8, 'AVI ')] },
  { what: 'mpeg-video', isSound: true, signatures: [sign(0, '\0\0\x01\xba')] },
  { what: 'real-audio', isSound: true, signatures: [sign(0, '.RMF')] },
  { what: 'real-audio', isSound: true, signatures: [sign(0, '.ra\xfd')] },
  { what: 'monkeys-audio', isSound: true, signatures: [sign(0, 'MAC ')] },
  { what: 'dolby', isSound: true, signatures: [sign(0, '\x0b\x77')] },
  { what: 'dsd', isSound: true, signatures: [sign(0, 'DSD ')] },
  { what: 'sun-audio', isSound: true, signatures: [sign(0, '.snd')] },
  {
    what: 'rar',
    isSound: false,
    signatures: [sign(0, 'Rar!')],
  },
  {
    what: '7z',
    isSound: false,
    signatures: [sign(0, '7z\xbc\xaf')],
  },
];

/** How far into a file without a signature an MPEG frame is looked for. */
const SEARCH_BYTES = 65_536;

/** Bytes → what they are, by content alone. */
export function sniff(bytes: Uint8Array): Sniffed {
  const startByte = afterId3(bytes);
  for (const { format, signatures } of DECODABLE) {
    if (signatures.every((signature) => matches(bytes, startByte, signature))) return { format, startByte };
  }
  for (const { what, isSound, signatures } of OTHERS) {
    if (signatures.every((signature) => matches(bytes, 0, signature)))
      return { format: 'other', what, isSound };
  }
  if (isAdts(bytes, startByte)) return { format: 'adts', startByte };
  for (let at = startByte; at < Math.min(bytes.length, startByte + SEARCH_BYTES); at++) {
    const frame = mpegFrameAt(bytes, at);
    if (frame === null) continue;
    const next = at + frame.bytes;
    // One sync word turns up anywhere by chance: the next frame must follow, or the file end with this one.
    if (mpegFrameAt(bytes, next) !== null || (at === startByte && next >= bytes.length)) {
      return { format: 'mp3', startByte: at };
    }
  }
  return { format: 'unknown' };
}

function sign(at: number, bytes: string): Signature {
  return { at, bytes };
}

function matches(bytes: Uint8Array, startByte: number, { at, bytes: wanted }: Signature): boolean {
  for (let i = 0; i < wanted.length; i++) {
    if (bytes[startByte + at + i] !== wanted.charCodeAt(i)) return false;
  }
  return true;
}

/** Offset behind ID3v2 tags at the start (ID3v2.4.0 structure, section 3.1: four 7-bit size bytes, optional footer). */
function afterId3(bytes: Uint8Array): number {
  let at = 0;
  while (matches(bytes, at, sign(0, 'ID3')) && at + 10 <= bytes.length) {
    const size =
      ((bytes[at + 6]! & 0x7f) << 21) |
      ((bytes[at + 7]! & 0x7f) << 14) |
      ((bytes[at + 8]! & 0x7f) << 7) |
      (bytes[at + 9]! & 0x7f);
    at += 10 + size + ((bytes[at + 5]! & 0x10) === 0 ? 0 : 10);
  }
  return Math.min(at, bytes.length);
}

/** ADTS (ISO/IEC 13818-7, 6.2): twelve ones, layer 00; checked by the next header where its length says it is. */
function isAdts(bytes: Uint8Array, at: number): boolean {
  const header = (i: number): boolean => bytes[i] === 0xff && (bytes[i + 1]! & 0xf6) === 0xf0;
  if (at + 7 > bytes.length || !header(at)) return false;
  const length = ((bytes[at + 3]! & 3) << 11) | (bytes[at + 4]! << 3) | (bytes[at + 5]! >> 5);
  return length > 7 && (at + length + 1 >= bytes.length || header(at + length));
}
