import type { DBSchema } from 'idb';
import { createDatabase, type Migration } from '../database/index.ts';
import { nameFor } from '../history/index.ts';

/** An attempt that a page was closed over: what had sounded of it. */
export interface LeftBehind {
  /** as `Keeping` has it */
  readonly id: string;
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
  /** what was said about it when it began */
  readonly about: unknown;
}

/** The attempt in progress. */
export interface Keeping {
  /** its name from its first moment on, also in the journal: what is kept there already is told from what is not by it */
  readonly id: string;
  /** Adds a piece, one Float32Array a channel; pieces are joined in their order. */
  add(channels: readonly Float32Array[]): void;
  /** It is kept elsewhere, or was none: its pieces are forgotten. */
  end(): void;
}

/** Keeps the sound of an attempt in progress, piece by piece, so that a page that is closed or reloaded loses none of it. */
export interface Unfinished {
  /** Begins an attempt; one that is never ended stays to be recovered. `about`: anything that structured cloning copies. */
  begin(sampleRateHz: number, about: unknown): Keeping;
  /** What pages that are no longer open left behind of a kind, oldest first; each stays until it is forgotten. */
  recover(
    isOfKind?: (about: unknown) => boolean,
  ): Promise<readonly (LeftBehind & { readonly forget: () => Promise<void> })[]>;
}

interface Begun {
  readonly id: string;
  readonly page: string;
  readonly atMs: number;
  readonly sampleRateHz: number;
  readonly about: unknown;
}

interface Schema extends DBSchema {
  attempts: { key: string; value: Begun };
  pieces: { key: [string, number]; value: { readonly channels: readonly Float32Array[] } };
}

const MIGRATIONS: readonly Migration<Schema>[] = [
  (database) => {
    database.createObjectStore('attempts', { keyPath: 'id' });
    database.createObjectStore('pieces');
  },
];
const STORE = 'evenfall-unfinished';

export function createUnfinished(): Unfinished {
  const page = `${STORE}-${crypto.randomUUID()}`;
  const database = createDatabase(STORE, MIGRATIONS);
  let work: Promise<unknown> = Promise.resolve();

  /**
   * Begun at once, whatever is still being written: a piece that waited for the one before would be lost with the page. The database
   * does what concerns the same stores in the order in which it was begun, so no piece overtakes the end of its attempt.
   */
  const write = async (act: () => Promise<unknown>): Promise<void> => {
    // A browser that keeps nothing (private windows) must not stop the playing: the sound is still in the page.
    const written = act().catch(() => undefined);
    work = Promise.all([work, written]).then(() => undefined);
    await written;
  };
  const forget = (id: string): Promise<void> =>
    write(() =>
      database.write(['attempts', 'pieces'], async (store) => {
        await store('pieces').delete(piecesOf(id));
        await store('attempts').delete(id);
      }),
    );
  holdLock(page);

  return {
    begin: (sampleRateHz, about) => {
      const id = crypto.randomUUID();
      const atMs = Date.now();
      let next = 0;
      void write(() => database.put('attempts', { id, page, atMs, sampleRateHz, about }));
      return {
        id: nameOf(id, atMs),
        add: (channels) => {
          if ((channels[0]?.length ?? 0) === 0) return;
          const key: [string, number] = [id, next++];
          void write(() => database.put('pieces', { channels }, key));
        },
        end: () => void forget(id),
      };
    },
    recover: async (isOfKind = () => true) => {
      await work;
      const alive = new Set((await navigator.locks?.query())?.held?.map(({ name }) => name));
      const begun = await database.use((open) => open.getAll('attempts'));
      const left = begun
        .filter((one) => one.page !== page && !alive.has(one.page) && isOfKind(one.about))
        .sort((a, b) => a.atMs - b.atMs);
      return Promise.all(
        left.map(async ({ id, atMs, sampleRateHz, about }) => {
          const pieces = await database.use((open) => open.getAll('pieces', piecesOf(id)));
          const channels = joined(pieces.map((piece) => piece.channels));
          return { id: nameOf(id, atMs), channels, sampleRateHz, about, forget: () => forget(id) };
        }),
      );
    },
  };
}

const nameOf = (id: string, atMs: number): string => nameFor(atMs, id.slice(0, 8));

const piecesOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Infinity]);

/** Held for as long as the page is open: its attempt in progress is not to be taken for one left behind. */
function holdLock(name: string): void {
  void navigator.locks?.request(name, () => new Promise<void>(() => undefined)).catch(() => undefined);
}

/** Pieces in their order → whole channels; one that came or went is silence where it was not. */
export function joined(pieces: readonly (readonly Float32Array[])[]): readonly Float32Array[] {
  const frames = pieces.reduce((sum, piece) => sum + (piece[0]?.length ?? 0), 0);
  const count = Math.max(0, ...pieces.map((piece) => piece.length));
  return Array.from({ length: count }, (_, channel) => {
    const whole = new Float32Array(frames);
    let at = 0;
    for (const piece of pieces) {
      if (piece[channel] !== undefined) whole.set(piece[channel], at);
      at += piece[0]!.length;
    }
    return whole;
  });
}
