import type { Hand } from '../../engine/index.ts';

/** German and English hands begin with the same letters. */
const HANDS: Readonly<Record<string, Hand>> = { l: 'left', r: 'right' };

/** The same as assistive technology is told. */
export const KEYS: Readonly<Record<Hand, string>> = { left: 'L', right: 'R' };

/** L or R, alone → the hand; null: another key. */
function handOf({ key, altKey, ctrlKey, metaKey }: KeyboardEvent): Hand | null {
  return altKey || ctrlKey || metaKey ? null : (HANDS[key.toLowerCase()] ?? null);
}

/**
 * Attached to where the hand is asked: L and R answer, but only while something in it has the focus, so that no letter does anything
 * to somebody who speaks to the computer or writes elsewhere (WCAG 2.1.4).
 */
export function handKeys(say: (hand: Hand) => void): (where: HTMLElement) => () => void {
  return (where) => {
    const press = (event: KeyboardEvent): void => {
      const hand = handOf(event);
      if (hand === null) return;
      event.preventDefault();
      event.stopPropagation();
      say(hand);
    };
    where.addEventListener('keydown', press);
    return () => where.removeEventListener('keydown', press);
  };
}
