import { EvenfallError } from '../troubles/index.ts';

/**
 * denied: by the user or the system; none: no microphone; busy: taken by something else; unsupported: this browser; mute: its
 * sound does not start.
 */
type MicrophoneFailure = 'denied' | 'none' | 'busy' | 'unsupported' | 'mute';

/** Why the microphone cannot be heard. */
export class MicrophoneError extends EvenfallError {
  override readonly name = 'MicrophoneError';

  constructor(kind: MicrophoneFailure) {
    super({ trouble: `microphone-${kind}` });
  }
}

/** What getUserMedia throws (Media Capture and Streams, W3C, section 10.3.1 "getUserMedia()") → our error. */
export function microphoneError(cause: unknown): MicrophoneError {
  if (cause instanceof MicrophoneError) return cause;
  const name = cause instanceof Error ? cause.name : '';
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return new MicrophoneError('denied');
    case 'NotFoundError':
    case 'OverconstrainedError':
      return new MicrophoneError('none');
    case 'NotReadableError':
    case 'AbortError':
      return new MicrophoneError('busy');
    default:
      return new MicrophoneError('unsupported');
  }
}
