import { debuglog } from 'node:util';

const debug = debuglog('evenfall');

/** What should not happen, in words for whoever only has a recording. Its place in the code is told to whoever asks Node for it. */
export const FAULT =
  'The analysis failed through a fault of this program. NODE_DEBUG=evenfall in front of the command shows where.';

/** Tells a fault's place in the code, on stderr, where NODE_DEBUG asks for it. */
export function noteFault(cause: unknown): void {
  debug('%o', cause);
}
