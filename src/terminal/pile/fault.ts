import { debuglog } from 'node:util';

const debug = debuglog('evenfall');

/** What should not happen: tells a fault's place in the code, on stderr, where NODE_DEBUG asks for it. */
export function noteFault(cause: unknown): void {
  debug('%o', cause);
}
