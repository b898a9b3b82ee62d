import type { Console } from './console.ts';

const BAR_COLUMNS = 24;

/** A bar on a terminal, nothing elsewhere: `show` draws it, `clear` takes it away before anything else is printed. */
export interface Progress {
  /** `name`: another than the bar was made with */
  show(share: number, name?: string): void;
  clear(): void;
}

export function createProgress(console: Console, name: string, quiet: boolean): Progress {
  const { overwrite, paper } = console;
  if (overwrite === null || quiet) return { show: () => undefined, clear: () => undefined };
  const [full, empty] = paper.unicode ? ['█', '░'] : ['#', '.'];
  let last = -1;
  return {
    show: (share, shown = name) => {
      const percent = Math.floor(share * 100);
      if (percent === last) return;
      last = percent;
      const filled = Math.round(share * BAR_COLUMNS);
      overwrite(`${full!.repeat(filled)}${empty!.repeat(BAR_COLUMNS - filled)} ${percent} %  `, shown);
    },
    clear: () => {
      if (last >= 0) overwrite('', '');
      last = -1;
    },
  };
}
