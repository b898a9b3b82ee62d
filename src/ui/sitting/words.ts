import type { Sitting } from './state/sitting.svelte.ts';
import { strings } from '../language/index.ts';

/** What the listening is doing, in words that are read from two metres. */
export function stateWords(
  sitting: Pick<Sitting, 'phase' | 'halted' | 'face' | 'attempts' | 'waits' | 'passedOver'>,
): string {
  const t = strings().stand;
  if (sitting.phase === 'opening') return t.opening;
  if (sitting.halted) return t.notListening;
  switch (sitting.face) {
    case 'waiting':
      return sitting.passedOver ? t.passedOver : t.waiting;
    case 'listening':
      return sitting.waits ? t.waits : t.listening;
    case 'working':
      return t.working;
    case 'told':
      return sitting.passedOver ? t.passedOver : t.told(sitting.attempts);
  }
}
