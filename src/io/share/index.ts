export { createReceived } from './received.ts';
export type { Received } from './received.ts';

/** The system's own way to pass a file on: messages, mail, another device. */
export interface Share {
  /** Whether this device can pass on such a file. */
  can(file: File): boolean;
  /** Opens the system's sheet; false: it was left again. Rejects where the system could not. Must come of a touch. */
  share(file: File): Promise<boolean>;
}

/** The browser's, passed in: `navigator`. Many desktop browsers have none. */
export function createShare(system: Partial<Pick<Navigator, 'canShare' | 'share'>>): Share {
  return {
    can: (file) => system.share !== undefined && (system.canShare?.({ files: [file] }) ?? false),
    share: async (file) => {
      try {
        await system.share?.({ files: [file], title: file.name });
        return true;
      } catch (error) {
        if (error instanceof DOMException && error.name === 'AbortError') return false;
        throw error;
      }
    },
  };
}
