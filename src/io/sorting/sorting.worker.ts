/** Sorts files beside the page, one at a time; the page ends it by ending the worker. */
import type { Trouble } from '../troubles/index.ts';
import { DecodeError } from '../decode/index.ts';
import type { DecodedAudio } from '../decode/index.ts';
import { decodeInWorker } from '../decode/worker.ts';
import type { SortReply, SortRequest } from './messages.ts';
import { createTeller } from './progress.ts';
import { sortAndCut } from './sort-sound.ts';

const reply = (message: SortReply, transfer: Transferable[] = []): void =>
  self.postMessage(message, { transfer });

/** waits for what the page's decoder makes of the file */
let onDecoded: (audio: DecodedAudio | null) => void = () => undefined;
const byPage = (): Promise<DecodedAudio | null> => {
  reply({ kind: 'decode' });
  return new Promise((resolve) => (onDecoded = resolve));
};

async function sort({ file, name, options }: Extract<SortRequest, { kind: 'sort' }>): Promise<void> {
  try {
    const sorted = await sortAndCut(
      (open) => decodeInWorker(file, name, open, byPage),
      options,
      createTeller((share) => reply({ kind: 'progress', share })),
    );
    const sounds = sorted.attempts.map(({ sound }) => sound.bytes.buffer);
    reply({ kind: 'done', file: sorted }, sounds);
  } catch (error) {
    if (error instanceof DecodeError) reply({ kind: 'failed', reason: 'unreadable', trouble: error.trouble });
    else {
      const trouble: Trouble = { trouble: 'within', name, of: { trouble: 'not-listened-to' } };
      reply({ kind: 'failed', reason: 'failed', trouble });
    }
  }
}

self.addEventListener('message', ({ data }: MessageEvent<SortRequest>) => {
  if (data.kind === 'sort') void sort(data);
  else onDecoded(data.audio);
});
