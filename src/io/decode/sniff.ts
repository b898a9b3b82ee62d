import type { OtherFile } from '../troubles/index.ts';
import { mpegFrameAt } from './mpeg-frames.ts';

/** What there is a decoder for. */
export type Decodable = 'wav' | 'aiff' | 'caf' | 'flac' | 'ogg' | 'matroska' | 'mp4' | 'mp3' | 'adts';

/** Formats told by their content. `other` names what it is instead. */
export type Sniffed =
  | { readonly format: Decodable; readonly startByte: number }
  | { readonly format: 'other'; readonly what: OtherFile; readonly isSound: boolean }
  | { readonly format: 'unknown' };

/**
 * How files begin, `?` for any byte, each from its format's own specification: RIFF/WAVE (Multimedia Programming Interface 1991),
 * RF64/BW64 (EBU Tech 3306, ITU-R BS.2088), AIFF (version 1.3, 1989), Core Audio (Apple's specification 1.0), FLAC (RFC 9639), Ogg
 * (RFC 3533), EBML (RFC 8794), ISO base media (ISO/IEC 14496-12).
 */
const DECODABLE: readonly (readonly [Exclude<Decodable, 'mp3' | 'adts'>, ...beginnings: string[]])[] = [
  ['wav', 'RIFF????WAVE', 'RF64????WAVE', 'BW64????WAVE'],
  ['aiff', 'FORM????AIFF', 'FORM????AIFC'],
  ['caf', 'caff'],
  ['flac', 'fLaC'],
  ['ogg', 'OggS'],
  ['matroska', '\x1a\x45\xdf\xa3'],
  ['mp4', '????ftyp', '????moov', '????mdat', '????wide', '????free', '????skip'],
];

/** Things that people send by mistake, only for a clear message … */
const NO_SOUND: readonly (readonly [OtherFile, ...beginnings: string[]])[] = [
  ['midi', 'RIFF????RMID', 'MThd'],
  ['pdf', '%PDF'],
  ['jpeg', '\xff\xd8\xff'],
  ['png', '\x89PNG'],
  ['zip', 'PK\x03\x04'],
  ['web-page', '<!', '<html'],
  ['rar', 'Rar!'],
  ['7z', '7z\xbc\xaf'],
];
/** … and sound that is rare. */
const OTHER_SOUND: readonly (readonly [OtherFile, ...beginnings: string[]])[] = [
  ['amr', '#!AMR'],
  ['windows-media', '\x30\x26\xb2\x75'],
  ['wavpack', 'wvpk'],
  ['avi', 'RIFF????AVI '],
  ['mpeg-video', '\0\0\x01\xba'],
  ['real-audio', '.RMF', '.ra\xfd'],
  ['monkeys-audio', 'MAC '],
  ['dolby', '\x0b\x77'],
  ['dsd', 'DSD '],
  ['sun-audio', '.snd'],
];

/** How far into a file without a signature an MPEG frame is looked for. */
const SEARCH_BYTES = 65_536;

/** Bytes → what they are, by content alone. */
export function sniff(bytes: Uint8Array): Sniffed {
  const startByte = afterId3(bytes);
  const [format] = DECODABLE.find(([, ...all]) => all.some((one) => begins(bytes, startByte, one))) ?? [];
  if (format !== undefined) return { format, startByte };
  for (const [others, isSound] of [[NO_SOUND, false] as const, [OTHER_SOUND, true] as const]) {
    const [what] = others.find(([, ...all]) => all.some((one) => begins(bytes, 0, one))) ?? [];
    if (what !== undefined) return { format: 'other', what, isSound };
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

function begins(bytes: Uint8Array, startByte: number, beginning: string): boolean {
  return [...beginning].every((sign, at) => sign === '?' || bytes[startByte + at] === sign.charCodeAt(0));
}

/** Offset behind ID3v2 tags at the start (ID3v2.4.0 structure, section 3.1: four 7-bit size bytes, optional footer). */
function afterId3(bytes: Uint8Array): number {
  let at = 0;
  while (begins(bytes, at, 'ID3') && at + 10 <= bytes.length) {
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
