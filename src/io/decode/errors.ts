/**
 * Why a file gave no sound: nothing in it; not a sound file; a kind of sound that cannot be decoded here; damaged; or a
 * container (a video, say) without a sound track.
 */
export type DecodeFailure = 'empty' | 'not-sound' | 'unsupported' | 'damaged' | 'no-sound-track';

/** A file that cannot be decoded. The message says what, where, and the way out. */
export class DecodeError extends Error {
  override readonly name = 'DecodeError';
  readonly kind: DecodeFailure;

  constructor(kind: DecodeFailure, message: string) {
    super(message);
    this.kind = kind;
  }
}

/** The usual way out of an unknown or unsupported format. */
export const CONVERT = 'Convert it to WAV, FLAC, MP3 or Ogg, then try again.';
