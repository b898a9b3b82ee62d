import type { Stand } from './state/stand.svelte.ts';
import { strings } from '../language/index.ts';

/** What the listening is doing, in words that are read from two metres. */
export function stateWords(stand: Pick<Stand, 'phase' | 'halted' | 'face' | 'attempts'>): string {
  const t = strings().stand;
  if (stand.phase === 'opening') return t.opening;
  if (stand.halted) return t.notListening;
  switch (stand.face) {
    case 'waiting':
      return t.waiting;
    case 'listening':
      return t.listening;
    case 'working':
      return t.working;
    case 'told':
      return t.told(stand.attempts);
  }
}
