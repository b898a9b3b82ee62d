export type * from './types.ts';
export type { SortingError, SortingFailure } from './errors.ts';
import { decodeByBrowser } from '../decode/browser.ts';
import type { Trouble } from '../troubles/index.ts';
import { SortingError } from './errors.ts';
import type { SortReply, SortRequest } from './messages.ts';
import { Pool } from './pool.ts';
import type { Port, PortEvents } from './pool.ts';
import type { SortedFile, Sorters } from './types.ts';
import { weightMb } from './weight.ts';

/** So many workers at most: each holds the networks, and the page wants a core too. */
const MOST_WORKERS = 4;
/** What the workers may hold of recordings together, MB; with the page and the networks it stays under 500. */
const BUDGET_MB = 300;

/** Sorters in workers, as many as the machine has cores for (two to four). They are started with the first file. */
export function createSorters(cores = navigator.hardwareConcurrency): Sorters {
  const workers = Math.min(Math.max(cores || 2, 2), MOST_WORKERS);
  const pool = new Pool<SortRequest, SortedFile>({ workers, open: openWorker, budgetMb: BUDGET_MB });
  /** files of which the first bytes are being looked at when all is called off */
  let round = 0;
  const stop = (why: Trouble): void => {
    round += 1;
    pool.cancel(why);
  };
  return {
    sort: async (file, name, options, onProgress = () => undefined) => {
      const mine = round;
      const needsMb = weightMb(await firstBytes(file, name), file.size);
      if (mine !== round) throw new SortingError('cancelled', { trouble: 'sorting-called-off' });
      return new Promise<SortedFile>((resolve, reject) => {
        const onReply = (reply: SortReply): void => {
          if (reply.kind === 'progress') onProgress(reply.share);
          if (reply.kind === 'done') resolve(reply.file);
        };
        pool.ask({ request: { kind: 'sort', file, name, options }, name, needsMb, onReply, reject });
      });
    },
    cancel: () => stop({ trouble: 'sorting-called-off' }),
    close: () => stop({ trouble: 'page-closed' }),
  };
}

/** Rejects where the file is gone or may not be read. */
async function firstBytes(file: Blob, name: string): Promise<Uint8Array> {
  try {
    return new Uint8Array(await file.slice(0, 4).arrayBuffer());
  } catch {
    throw new SortingError('unreadable', { trouble: 'within', name, of: { trouble: 'file-unreadable' } });
  }
}

function openWorker(events: PortEvents<SortedFile>): Port<SortRequest> {
  const worker = new Worker(new URL('./sorting.worker.ts', import.meta.url), { type: 'module' });
  let file: Blob | null = null;
  worker.addEventListener('message', ({ data }: MessageEvent<SortReply>) => {
    if (data.kind === 'decode') void decodeFor(worker, file);
    else events.reply(data);
  });
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    worker.terminate();
    events.died({ trouble: 'sorting-not-loaded' });
  });
  return {
    post: (request) => {
      if (request.kind === 'sort') file = request.file;
      worker.postMessage(request);
    },
    end: () => worker.terminate(),
  };
}

/** A worker has no decoder for its file: the page's own has a look. */
async function decodeFor(worker: Worker, file: Blob | null): Promise<void> {
  const bytes = await file?.arrayBuffer().catch(() => undefined);
  const audio = bytes === undefined ? null : await decodeByBrowser(bytes);
  const decoded: SortRequest = { kind: 'decoded', audio };
  worker.postMessage(decoded);
}
