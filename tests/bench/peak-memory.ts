import { readdirSync, readFileSync } from 'node:fs';

/** The most memory that a process ever held (Linux: VmHWM of proc(5)); NaN elsewhere. */
export function peakMbOf(pid: number): number {
  try {
    return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;
  } catch {
    return NaN;
  }
}

/** Processes that a process started and that run (Linux: PPid of proc(5)). */
export function childrenOf(parent: number): readonly number[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map(Number)
    .filter((pid) => {
      try {
        const status = readFileSync(`/proc/${pid}/status`, 'utf8');
        return Number(/PPid:\s+(\d+)/.exec(status)?.[1]) === parent;
      } catch {
        return false;
      }
    });
}
