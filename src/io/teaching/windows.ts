import type { Changed } from './types.ts';

/** The windows in which one database is open: what one of them changes, the others hear of. */
export interface Windows {
  tell(changed: Partial<Changed>): void;
  listen(call: (changed: Changed) => void): void;
  /** Whether this is the only one. */
  isAlone(): Promise<boolean>;
  close(): void;
}

const NOTHING: Required<Changed> = { students: [], files: [], playings: [], templates: [] };

/** Windows find each other by a channel of the database's name, and by a lock that each holds as long as it is open. */
export function createWindows(databaseName: string): Windows {
  const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel(databaseName) : null;
  const lock = `${databaseName}-window`;
  let letGo: () => void = () => undefined;
  const isHeld = new Promise<void>((granted) => {
    const hold = (): Promise<void> => {
      granted();
      return new Promise((resolve) => (letGo = resolve));
    };
    if (navigator.locks === undefined) granted();
    else void navigator.locks.request(lock, { mode: 'shared' }, hold).catch(() => granted());
  });
  return {
    tell: (changed) => {
      const all = { ...NOTHING, ...changed };
      if (Object.values(all).some((ids) => ids.length > 0)) channel?.postMessage(all);
    },
    listen: (call) => channel?.addEventListener('message', ({ data }: MessageEvent<Changed>) => call(data)),
    isAlone: async () => {
      await isHeld;
      const held = (await navigator.locks?.query())?.held ?? [];
      return held.filter(({ name }) => name === lock).length <= 1;
    },
    close: () => {
      letGo();
      channel?.close();
    },
  };
}
