import type { Stand } from '../attempt/stand.svelte.ts';

/** What the listening is doing, in words that are read from two metres. */
export function stateWords(stand: Pick<Stand, 'phase' | 'halted' | 'face' | 'attempts'>): string {
  if (stand.phase === 'opening') return 'Opening the microphone';
  if (stand.halted) return 'Not listening';
  switch (stand.face) {
    case 'waiting':
      return 'Waiting for your first note';
    case 'listening':
      return 'Listening';
    case 'working':
      return 'Working it out';
    case 'told':
      return `Attempt ${stand.attempts}. Ready for the next`;
  }
}
