/** denied: by the user or the system; none: no microphone; busy: taken by something else; unsupported: this browser. */
export type MicrophoneFailure = 'denied' | 'none' | 'busy' | 'unsupported';

/** Why the microphone cannot be heard, in plain words with the way out. */
export class MicrophoneError extends Error {
  override readonly name = 'MicrophoneError';
  readonly kind: MicrophoneFailure;

  constructor(kind: MicrophoneFailure) {
    super(MESSAGES[kind]);
    this.kind = kind;
  }
}

const MESSAGES: Readonly<Record<MicrophoneFailure, string>> = {
  denied:
    'The microphone is not allowed. Allow it for this page in the browser (the sign beside the address) and in the ' +
    'device’s own settings, then try again. You can also open a recording instead.',
  none: 'No microphone was found. Connect one, or open a recording instead.',
  busy: 'The microphone is taken by another program or page. Close that one, then try again.',
  unsupported:
    'This browser cannot record here. Open the page over https in a current browser, or open a recording instead.',
};

/** What getUserMedia throws (Media Capture and Streams, W3C, section 10.3.1 "getUserMedia()") → our error. */
export function microphoneError(cause: unknown): MicrophoneError {
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
