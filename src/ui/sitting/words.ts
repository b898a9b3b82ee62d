import type { Sitting } from './state/sitting.svelte.ts';
import { strings } from '../language/index.ts';

/** What the listening is doing, in words that are read from two metres. */
export function stateWords(sitting: Pick<Sitting, 'phase' | 'halted' | 'face' | 'attempts'>): string {
  const t = strings().stand;
  if (sitting.phase === 'opening') return t.opening;
  if (sitting.halted) return t.notListening;
  switch (sitting.face) {
    case 'waiting':
      return t.waiting;
    case 'listening':
      return t.listening;
    case 'working':
      return t.working;
    case 'told':
      return t.told(sitting.attempts);
  }
}
