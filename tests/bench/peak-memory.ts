import { readFileSync } from 'node:fs';

/** The most memory that a process ever held (Linux: VmHWM of proc(5)); NaN elsewhere. */
export function peakMbOf(pid: number): number {
  try {
    return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;
  } catch {
    return NaN;
  }
}
