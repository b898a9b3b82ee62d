/** A small sound file as it travels, one channel. */
export interface SoundFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly mime: 'audio/webm' | 'audio/wav';
}

/**
 * Whether the bytes are the kind of sound that they go by: "RIFF", a length, "WAVE" (Multimedia Programming Interface
 * 1991), or the head of EBML with the kind of document "webm" in it (RFC 8794, 11.2).
 */
export function isSoundOfKind(bytes: Uint8Array, mime: SoundFile['mime']): boolean {
  const head = String.fromCharCode(...bytes.subarray(0, HEAD_BYTES));
  return mime === 'audio/wav'
    ? bytes.length >= 44 && head.startsWith('RIFF') && head.slice(8, 12) === 'WAVE'
    : head.startsWith('\x1a\x45\xdf\xa3') && head.includes('\x42\x82\x84webm');
}

/** The head of EBML is some forty bytes long; other writers put in a few fields more. */
const HEAD_BYTES = 128;

const ENDINGS = { 'audio/webm': 'webm', 'audio/wav': 'wav' } as const;

/** The ending of a file with a sound in it. */
export const endingOf = ({ mime }: Pick<SoundFile, 'mime'>): 'webm' | 'wav' => ENDINGS[mime];

/** What a file with sound is, by its name; whether it is, its bytes say. */
export const mimeOf = (name: string): SoundFile['mime'] =>
  name.endsWith('.wav') ? 'audio/wav' : 'audio/webm';
