import { EvenfallError } from '../troubles/index.ts';
import type { Trouble } from '../troubles/index.ts';

/**
 * Why a file gave no sound: nothing in it; not a sound file; a kind of sound that cannot be decoded here; damaged; or a
 * container (a video, say) without a sound track.
 */
export type DecodeFailure = 'empty' | 'not-sound' | 'unsupported' | 'damaged' | 'no-sound-track';

/** A file that cannot be decoded: what, where, and the way out. */
export class DecodeError extends EvenfallError {
  override readonly name = 'DecodeError';
  readonly kind: DecodeFailure;

  constructor(kind: DecodeFailure, trouble: Trouble) {
    super(trouble);
    this.kind = kind;
  }
}
