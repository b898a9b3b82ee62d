/** The sorters as the page uses them, for the test and the bench of speed: files are chosen, then `sortChosen` is called. */
import { createSorters } from '../../../src/io/sorting/index.ts';

/** What became of one of the files chosen. */
export interface Outcome {
  readonly name: string;
  /** the attempts' titles, null for what was not recognised; or why there is no result */
  readonly titles: readonly (string | null)[] | string;
  readonly soundSec: readonly number[];
  readonly durationSec: number;
  readonly shares: readonly number[];
  readonly doneMs: number;
}

const workers = Number(new URLSearchParams(location.search).get('workers') ?? 0);
const sorters = workers > 0 ? createSorters(workers) : createSorters();
const chosen = (): readonly File[] => [...(document.querySelector('input')?.files ?? [])];

async function sortChosen(onProgress: () => void = () => undefined): Promise<readonly Outcome[]> {
  const beganMs = performance.now();
  return Promise.all(
    chosen().map(async (file): Promise<Outcome> => {
      const shares: number[] = [];
      const sorted = await sorters
        .sort(file, file.name, {}, (share) => {
          shares.push(share);
          onProgress();
        })
        .catch((error: unknown) => error as Error);
      const doneMs = performance.now() - beganMs;
      if (sorted instanceof Error)
        return { name: file.name, titles: sorted.message, soundSec: [], durationSec: 0, shares, doneMs };
      return {
        name: file.name,
        titles: sorted.attempts.map(({ report }) => report?.exercise.title ?? null),
        soundSec: sorted.attempts.map(({ sound }) => secondsOf(sound.bytes)),
        durationSec: sorted.durationSec,
        shares,
        doneMs,
      };
    }),
  );
}

/** Of a WAV of one channel in 16 bits: what follows its header, at the rate that it tells. */
function secondsOf({ buffer, byteLength }: Uint8Array<ArrayBuffer>): number {
  return (byteLength - 44) / 2 / new DataView(buffer).getUint32(24, true);
}

/** Begins, calls off as soon as the first has gone some of its way, and tells what was said of each file. */
async function sortAndCancel(): Promise<readonly Outcome[]> {
  let begun = (): void => undefined;
  const going = new Promise<void>((resolve) => (begun = resolve));
  const sorted = sortChosen(begun);
  await going;
  sorters.cancel();
  return sorted;
}

const sorting = { sortChosen, sortAndCancel };
declare global {
  interface Window {
    sorting: typeof sorting;
  }
}
window.sorting = sorting;
